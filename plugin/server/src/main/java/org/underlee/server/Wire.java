package org.underlee.server;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Requests and their answers, with an end to every wait. An interrupt of the calling thread cancels
 * the request.
 */
final class Wire {
  private static final int OK = 200;

  private final URI base;
  private final Limits limits;
  private final HttpClient http;

  Wire(URI base, Limits limits) {
    this.base = base;
    this.limits = limits;
    this.http =
        HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(limits.connect())
            .build();
  }

  URI base() {
    return base;
  }

  Limits limits() {
    return limits;
  }

  HttpRequest.Builder to(String path) {
    return HttpRequest.newBuilder(URI.create(base + path));
  }

  /** One that may be asked twice: the answer is waited for, and asked for again once if lost. */
  <T> T twice(HttpRequest request, HttpResponse.BodyHandler<T> handler) {
    Counted still = new Counted();
    try {
      return once(request, handler, still, limits.answer(), Progress.NONE);
    } catch (Lost e) {
      return sent(request, handler, still, limits.answer(), Progress.NONE);
    }
  }

  /**
   * Sends once and waits while bytes move.
   *
   * @param silence the longest wait without any
   */
  <T> T sent(
      HttpRequest request,
      HttpResponse.BodyHandler<T> handler,
      Counted counted,
      Duration silence,
      Progress progress) {
    try {
      return once(request, handler, counted, silence, progress);
    } catch (Lost e) {
      throw unreachable(e);
    }
  }

  private <T> T once(
      HttpRequest request,
      HttpResponse.BodyHandler<T> handler,
      Counted counted,
      Duration silence,
      Progress progress)
      throws Lost {
    CompletableFuture<HttpResponse<T>> answer = http.sendAsync(request, handler);
    try {
      return body(waited(answer, counted, silence, progress));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new ServerException("The work with " + base + " was cancelled.", "Nothing is lost.");
    } catch (ExecutionException e) {
      throw new Lost(Optional.ofNullable(e.getCause()).orElse(e));
    } finally {
      answer.cancel(true);
    }
  }

  private <T> HttpResponse<T> waited(
      CompletableFuture<HttpResponse<T>> answer,
      Counted counted,
      Duration silence,
      Progress progress)
      throws InterruptedException, ExecutionException {
    long seen = counted.bytes();
    long since = System.nanoTime();
    while (true) {
      try {
        return answer.get(1, TimeUnit.SECONDS);
      } catch (TimeoutException e) {
        long bytes = counted.bytes();
        if (bytes != seen) {
          seen = bytes;
          since = System.nanoTime();
          progress.bytes(bytes, counted.total());
        } else if (System.nanoTime() - since > silence.toNanos()) {
          throw new ServerException(
              base + " has not answered for " + silence.toSeconds() + " s.",
              "Try again later, or ask who runs the server.");
        }
      }
    }
  }

  private <T> T body(HttpResponse<T> response) {
    if (response.statusCode() != OK) {
      throw new ServerException(
          base + " answers, but not as a model server (HTTP status " + response.statusCode() + ").",
          "Give the address that the server's own pages have, such as http://models.example:8082.");
    }
    return response.body();
  }

  private ServerException unreachable(Lost lost) {
    String why = Optional.ofNullable(lost.getMessage()).orElse("the connection was lost");
    return new ServerException(
        base + " cannot be reached: " + why + ".",
        "Check the address and the network, and that the server is running.");
  }

  /** The connection was refused or broke off. */
  private static final class Lost extends IOException {
    private static final long serialVersionUID = 1;

    Lost(Throwable cause) {
      super(words(cause), cause);
    }

    private static String words(Throwable cause) {
      String message = cause.getMessage();
      return message == null ? "there is no connection (" + name(cause) + ")" : message;
    }

    private static String name(Throwable cause) {
      return cause.getClass().getSimpleName();
    }
  }
}
