"use strict";
(function () {
  const key = "underlee:" + document.body.dataset.key.slice(0, 16) + ":";

  // Ticks stay on this device; where storing is forbidden they last as long as the page.
  function stored(name) { try { return localStorage.getItem(key + name); } catch (e) { return null; } }
  function store(name, on) {
    try { if (on) { localStorage.setItem(key + name, "1"); } else { localStorage.removeItem(key + name); } } catch (e) { return; }
  }
  const boxes = Array.from(document.querySelectorAll("input[data-tick]"));
  function mark(box) {
    const card = box.closest("details");
    if (!card) { return; }
    const done = Array.from(card.querySelectorAll("input[data-tick]")).every(b => b.checked);
    document.querySelectorAll("a[data-bay]").forEach(a => {
      if (a.getAttribute("href") === "#" + card.id) { a.classList.toggle("u-done", done); }
    });
  }
  boxes.forEach(box => {
    box.checked = stored(box.dataset.tick) === "1";
    box.addEventListener("change", () => { store(box.dataset.tick, box.checked); mark(box); });
    mark(box);
  });

  // A link to a bay opens its card.
  function open() {
    const card = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (card && card.tagName === "DETAILS") { card.open = true; card.scrollIntoView(); }
  }
  window.addEventListener("hashchange", open);
  open();
  let closed = [];
  window.addEventListener("beforeprint", () => {
    closed = Array.from(document.querySelectorAll("details:not([open])"));
    closed.forEach(d => { d.open = true; });
  });
  window.addEventListener("afterprint", () => closed.forEach(d => { d.open = false; }));

  // The deck, to be turned.
  const canvas = document.getElementById("deck");
  const gl = canvas.getContext("webgl2", { antialias: true, alpha: false });
  if (!gl) {
    canvas.hidden = true;
    document.getElementById("no-turn").hidden = false;
    return;
  }
  const vertex = "#version 300 es\nin vec3 at;uniform mat4 view;out vec3 place;" +
    "void main(){place=at/65000.0;gl_Position=view*vec4(place,1.0);}";
  const fragment = "#version 300 es\nprecision highp float;in vec3 place;uniform vec4 paint;out vec4 colour;" +
    "void main(){vec3 n=normalize(cross(dFdx(place),dFdy(place)));" +
    "float light=0.62+0.38*abs(dot(n,normalize(vec3(0.35,-0.5,0.8))));colour=vec4(paint.rgb*light,paint.a);}";
  function shader(type, text) {
    const s = gl.createShader(type);
    gl.shaderSource(s, text);
    gl.compileShader(s);
    return s;
  }
  const program = gl.createProgram();
  gl.attachShader(program, shader(gl.VERTEX_SHADER, vertex));
  gl.attachShader(program, shader(gl.FRAGMENT_SHADER, fragment));
  gl.bindAttribLocation(program, 0, "at");
  gl.linkProgram(program);
  gl.useProgram(program);
  const viewAt = gl.getUniformLocation(program, "view");
  const paintAt = gl.getUniformLocation(program, "paint");
  const scene = JSON.parse(document.getElementById("scene").textContent);
  const groups = scene.groups.map(g => {
    const text = atob(g.data);
    const bytes = new Uint8Array(text.length);
    for (let i = 0; i < text.length; i++) { bytes[i] = text.charCodeAt(i); }
    const buffer = gl.createBuffer();
    gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
    gl.bufferData(gl.ARRAY_BUFFER, bytes, gl.STATIC_DRAW);
    return {
      buffer, count: bytes.length / 6, opacity: g.opacity,
      paint: [(g.rgb >> 16 & 255) / 255, (g.rgb >> 8 & 255) / 255, (g.rgb & 255) / 255, g.opacity]
    };
  });

  let turn = Math.atan2(scene.eye[0], -scene.eye[1]), tilt = Math.asin(scene.eye[2]), zoom = 1, waiting = false;
  function view(aspect) {
    const ct = Math.cos(turn), st = Math.sin(turn), cp = Math.cos(tilt), sp = Math.sin(tilt);
    const least = 2 * zoom / scene.height, sx = aspect < 1 ? least : least / aspect, sy = sx * aspect, m = scene.middle;
    // right, up and toward the viewer, as rows
    const r = [ct, st, 0], u = [-st * -sp, ct * -sp, cp], f = [st * cp, -ct * cp, sp];
    const off = v => -(v[0] * m[0] + v[1] * m[1] + v[2] * m[2]);
    return new Float32Array([
      r[0] * sx, u[0] * sy, -f[0] * 0.5, 0, r[1] * sx, u[1] * sy, -f[1] * 0.5, 0,
      r[2] * sx, u[2] * sy, -f[2] * 0.5, 0, off(r) * sx, off(u) * sy, off(f) * -0.5, 1]);
  }
  function draw() {
    waiting = false;
    const ratio = Math.min(2, window.devicePixelRatio || 1);
    const width = Math.round(canvas.clientWidth * ratio), height = Math.round(canvas.clientHeight * ratio);
    if (!width || !height) { return; }
    if (canvas.width !== width || canvas.height !== height) { canvas.width = width; canvas.height = height; }
    gl.viewport(0, 0, width, height);
    const dark = window.matchMedia("(prefers-color-scheme: dark)").matches;
    gl.clearColor(dark ? 0.1 : 0.97, dark ? 0.13 : 0.97, dark ? 0.15 : 0.965, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.enable(gl.DEPTH_TEST);
    gl.blendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA);
    gl.uniformMatrix4fv(viewAt, false, view(width / height));
    gl.enableVertexAttribArray(0);
    groups.forEach(g => {
      if (g.opacity < 1) { gl.enable(gl.BLEND); gl.depthMask(false); } else { gl.disable(gl.BLEND); gl.depthMask(true); }
      gl.bindBuffer(gl.ARRAY_BUFFER, g.buffer);
      gl.vertexAttribPointer(0, 3, gl.SHORT, false, 0, 0);
      gl.uniform4fv(paintAt, g.paint);
      gl.drawArrays(gl.TRIANGLES, 0, g.count);
    });
    gl.depthMask(true);
    canvas.dataset.view = turn.toFixed(2) + " " + tilt.toFixed(2) + " " + zoom.toFixed(2);
  }
  function soon() { if (!waiting) { waiting = true; requestAnimationFrame(draw); } }
  function by(dx, dy, scale) {
    turn -= dx;
    tilt = Math.max(-1.55, Math.min(1.55, tilt + dy));
    zoom = Math.max(0.5, Math.min(20, zoom * scale));
    soon();
  }

  const fingers = new Map();
  canvas.addEventListener("pointerdown", e => { canvas.setPointerCapture(e.pointerId); fingers.set(e.pointerId, e); });
  canvas.addEventListener("pointermove", e => {
    const before = fingers.get(e.pointerId);
    if (!before) { return; }
    if (fingers.size === 1) {
      by((e.clientX - before.clientX) / 150, (e.clientY - before.clientY) / 150, 1);
    } else {
      const other = Array.from(fingers.values()).find(f => f.pointerId !== e.pointerId);
      const was = Math.hypot(before.clientX - other.clientX, before.clientY - other.clientY);
      const is = Math.hypot(e.clientX - other.clientX, e.clientY - other.clientY);
      if (was > 0) { by(0, 0, is / was); }
    }
    fingers.set(e.pointerId, e);
  });
  ["pointerup", "pointercancel"].forEach(n => canvas.addEventListener(n, e => fingers.delete(e.pointerId)));
  canvas.addEventListener("wheel", e => { e.preventDefault(); by(0, 0, Math.exp(-e.deltaY / 500)); }, { passive: false });
  canvas.addEventListener("keydown", e => {
    const step = { ArrowLeft: [-0.1, 0, 1], ArrowRight: [0.1, 0, 1], ArrowUp: [0, -0.1, 1], ArrowDown: [0, 0.1, 1], "+": [0, 0, 1.1], "-": [0, 0, 1 / 1.1] }[e.key];
    if (step) { e.preventDefault(); by(step[0], step[1], step[2]); }
  });
  new ResizeObserver(soon).observe(canvas);
  soon();
})();
