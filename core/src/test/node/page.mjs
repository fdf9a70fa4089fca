// Opens the page in Chromium as a phone and as a desktop and says what it finds, one JSON object.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import puppeteer from "puppeteer-core";

const [file, chromium, bay, other] = readFileSync(0, "utf8").trim().split("\n");
const axe = readFileSync(new URL("node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const url = pathToFileURL(file).href;
const browser = await puppeteer.launch({
  executablePath: chromium,
  // a machine that builds something else at the same time is slow to start it
  timeout: 240_000,
  protocolTimeout: 600_000,
  args: ["--no-sandbox", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"],
});
const found = { requests: [], errors: [], violations: [], views: [] };
const sizes = [
  { name: "phone", width: 390, height: 844, isMobile: true, hasTouch: true },
  { name: "desktop", width: 1280, height: 900 },
];
for (const size of sizes) {
  const page = await browser.newPage();
  await page.setViewport(size);
  page.on("request", r => { if (r.url().split("#")[0] !== url && !r.url().startsWith("data:")) found.requests.push(r.url()); });
  page.on("pageerror", e => found.errors.push(String(e)));
  page.on("console", m => { if (m.type() === "error") found.errors.push(m.text()); });
  await page.goto(url);
  const link = await page.waitForSelector(`.u-bays a[href="#bay-${bay}"]`);
  if (size.hasTouch) { await link.tap(); } else { await link.click(); }
  await page.waitForFunction(id => document.getElementById(id).open, {}, "bay-" + bay);
  const text = await page.$eval(`[id="bay-${bay}"]`, e => e.innerText);
  const boxes = await page.$$(`[id="bay-${bay}"] input`);
  for (const box of boxes) { if (!await box.evaluate(b => b.checked)) { await box.evaluate(b => b.click()); } }
  await page.reload();
  const kept = await page.$$eval(`[id="bay-${bay}"] input`, all => all.every(b => b.checked));
  const filled = await page.$eval(`.u-bays a[href="#bay-${bay}"]`, a => a.classList.contains("u-done"));
  const tapped = "bay-" + other;
  const inPlan = await page.$(`svg a[data-bay="${other}"]`);
  await inPlan.evaluate(a => a.scrollIntoView({ block: "center" }));
  if (size.hasTouch) { await inPlan.tap(); } else { await inPlan.click(); }
  await page.waitForFunction(id => document.getElementById(id).open, { timeout: 10000 }, tapped);
  const planFilled = await page.$eval(`svg a[data-bay="${bay}"]`, a => a.classList.contains("u-done"));
  const canvas = await page.$("#deck");
  await canvas.evaluate(c => c.scrollIntoView({ block: "center" }));
  await page.waitForFunction(() => document.getElementById("deck").dataset.view);
  const before = await canvas.evaluate(c => c.dataset.view);
  const place = await canvas.boundingBox();
  const x = place.x + place.width / 2, y = place.y + place.height / 2;
  if (size.hasTouch) {
    await page.touchscreen.touchStart(x, y);
    await page.touchscreen.touchMove(x + 60, y + 30);
    await page.touchscreen.touchEnd();
  } else {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y + 30);
    await page.mouse.up();
  }
  await page.waitForFunction(b => document.getElementById("deck").dataset.view !== b, { timeout: 10000 }, before);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
  found.views.push({ size: size.name, text, kept, filled, planFilled, turned: true, overflow });
  for (const scheme of ["light", "dark"]) {
    await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: scheme }]);
    await page.evaluate(axe + "; null");
    const result = await page.evaluate(() => axe.run(document));
    found.violations.push(...result.violations.map(v => size.name + " " + scheme + " " + v.id + ": " + v.nodes.map(n => n.html.slice(0, 120)).slice(0, 3).join(" | ")));
  }
  if (size.name === "desktop") {
    const pdf = await page.pdf({ format: "A4" });
    found.printed = Buffer.from(pdf).subarray(0, 5).toString("latin1");
    found.printedBytes = pdf.length;
  }
  await page.evaluate(() => localStorage.clear());
  await page.close();
}
await browser.close();
console.log(JSON.stringify(found));
