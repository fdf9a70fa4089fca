package org.underlee.server;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * Stands between the client and the server: counts the requests, keeps what was said, and lets the
 * connection break at one of them.
 */
final class Between implements AutoCloseable {
  /** How a request fails. */
  enum Fault {
    NONE,
    /** The server is not there any more: this request and all that follow. */
    GONE,
    /** One connection breaks before the server has the request. */
    LOST_ASKING,
    /** The server has the request and does it; its answer is lost, and so is all that follows. */
    GONE_ANSWERING,
    /** One answer breaks off in its middle. */
    HALF_ANSWER
  }

  private final HttpServer front;
  private final ExecutorService threads = Executors.newCachedThreadPool();
  private final URI behind;
  private final HttpClient client = HttpClient.newHttpClient();
  private final List<String> said = new ArrayList<>();
  private final Fault fault;
  private final int at;
  private Runnable beforeUpload = () -> {};
  private int requests;

  /**
   * Stands before a server.
   *
   * @param at which request fails, counted from 1
   */
  Between(URI behind, Fault fault, int at) throws IOException {
    this.behind = behind;
    this.fault = fault;
    this.at = at;
    front = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    front.setExecutor(threads);
    front.createContext("/", this::pass);
    front.start();
  }

  URI address() {
    return URI.create("http://127.0.0.1:" + front.getAddress().getPort());
  }

  /** Done once, when a model is on its way. */
  void beforeUpload(Runnable work) {
    beforeUpload = work;
  }

  synchronized int requests() {
    return requests;
  }

  /** Addresses, in their order. */
  synchronized List<String> said() {
    return List.copyOf(said);
  }

  private synchronized int next(String path) {
    said.add(path);
    return ++requests;
  }

  private void pass(HttpExchange exchange) throws IOException {
    int number = next(exchange.getRequestURI().toString());
    boolean gone = fault == Fault.GONE && number >= at;
    boolean after = fault == Fault.GONE_ANSWERING && number > at;
    if (gone || after || (fault == Fault.LOST_ASKING && number == at)) {
      exchange.getRequestBody().readNBytes(1);
      exchange.close();
      return;
    }
    byte[] request = exchange.getRequestBody().readAllBytes();
    if (exchange.getRequestURI().getPath().equals("/upload")) {
      Runnable work = beforeUpload;
      beforeUpload = () -> {};
      work.run();
    }
    answer(exchange, number, forwarded(exchange, request));
  }

  private void answer(HttpExchange exchange, int number, HttpResponse<byte[]> answer)
      throws IOException {
    if (fault == Fault.GONE_ANSWERING && number == at) {
      exchange.close();
      return;
    }
    boolean half = fault == Fault.HALF_ANSWER && number == at;
    byte[] body = answer.body();
    exchange.sendResponseHeaders(answer.statusCode(), body.length);
    exchange.getResponseBody().write(body, 0, half ? body.length / 2 : body.length);
    exchange.close();
  }

  private HttpResponse<byte[]> forwarded(HttpExchange exchange, byte[] body) throws IOException {
    HttpRequest request =
        HttpRequest.newBuilder(behind.resolve(exchange.getRequestURI().toString()))
            .header("Content-Type", exchange.getRequestHeaders().getFirst("Content-Type"))
            .POST(BodyPublishers.ofByteArray(body))
            .build();
    try {
      return client.send(request, BodyHandlers.ofByteArray());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  @Override
  public void close() {
    front.stop(0);
    threads.shutdownNow();
  }
}
