package org.underlee.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.api.extension.ParameterContext;
import org.junit.jupiter.api.extension.ParameterResolver;

/** One real model server for all tests of a run, stopped at its end. */
final class WithServer implements BeforeAllCallback, ParameterResolver {
  private record Running(TestServer server) implements AutoCloseable {
    @Override
    public void close() {
      server.close();
    }
  }

  @Override
  public void beforeAll(ExtensionContext context) {
    running(context);
  }

  @Override
  public boolean supportsParameter(ParameterContext parameter, ExtensionContext context) {
    return parameter.getParameter().getType() == TestServer.class;
  }

  @Override
  public Object resolveParameter(ParameterContext parameter, ExtensionContext context) {
    return running(context).server;
  }

  private static Running running(ExtensionContext context) {
    return context
        .getRoot()
        .getStore(Namespace.GLOBAL)
        .getOrComputeIfAbsent(Running.class, k -> start(), Running.class);
  }

  private static Running start() {
    try {
      Path home = Files.createTempDirectory("model-server");
      useLocalRepositoryOnly(home);
      return new Running(
          new TestServer(home, List.of(Bundles.readersAndWriters(), Bundles.underlee())));
    } catch (Exception e) {
      throw new IllegalStateException("the model server does not start", e);
    }
  }

  /** The server looks for what a bundle asks for where Maven's settings say; they are ours here. */
  static void useLocalRepositoryOnly(Path home) throws IOException {
    Path settings = Files.createDirectories(home.resolve(".m2")).resolve("settings.xml");
    Files.writeString(
        settings,
        "<settings><offline>true</offline><localRepository>"
            + System.getProperty("underlee.repository")
            + "</localRepository></settings>");
    System.setProperty("user.home", home.toString());
  }
}
