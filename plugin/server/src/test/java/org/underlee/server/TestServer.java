package org.underlee.server;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import javax.activation.DataHandler;
import javax.activation.FileDataSource;
import org.bimserver.BimServer;
import org.bimserver.BimServerConfig;
import org.bimserver.EmbeddedWebServerInterface;
import org.bimserver.Environment;
import org.bimserver.models.log.AccessMethod;
import org.bimserver.models.store.ServerState;
import org.bimserver.plugins.ResourceFetcher;
import org.bimserver.servlets.RootServlet;
import org.bimserver.shared.interfaces.AdminInterface;
import org.bimserver.shared.interfaces.PluginInterface;
import org.bimserver.shared.interfaces.SettingsInterface;
import org.bimserver.webservices.ServiceMap;
import org.bimserver.webservices.authorization.SystemAuthorization;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.servlet.ServletHolder;
import org.eclipse.jetty.webapp.WebAppContext;
import org.eclipse.jetty.websocket.jsr356.server.deploy.WebSocketServerContainerInitializer;

/** A real model server in this JVM, on the loopback address only. */
final class TestServer implements AutoCloseable {
  static final String ADMIN = "admin@example.org";
  static final String PASSWORD = "not-a-secret";

  private final BimServer server;
  private final int port;

  /**
   * Starts a server.
   *
   * @param home its database; one that is there is opened again
   * @param plugins bundles to install into a new database
   */
  TestServer(Path home, List<Path> plugins) throws Exception {
    this.port = freePort();
    this.server = new BimServer(config(home));
    Server web = web(home);
    server.setEmbeddedWebServer(new Web(web));
    server.start();
    if (server.getServerInfo().getServerState() == ServerState.NOT_SETUP) {
      setUp(plugins);
    }
    server.activateServices();
  }

  URI address() {
    return URI.create("http://127.0.0.1:" + port);
  }

  private ServiceMap system() {
    return server
        .getServiceFactory()
        .get(new SystemAuthorization(1, TimeUnit.HOURS), AccessMethod.INTERNAL);
  }

  @Override
  public void close() {
    server.stop();
  }

  private BimServerConfig config(Path home) throws IOException {
    BimServerConfig config = new BimServerConfig();
    config.setHomeDir(Files.createDirectories(home));
    config.setResourceFetcher(new Resources());
    config.setClassPath(System.getProperty("java.class.path"));
    config.setLocalDev(true);
    config.setEnvironment(Environment.LOCAL_DEV);
    config.setPort(port);
    config.setStartEmbeddedWebServer(true);
    config.setAutoMigrate(true);
    return config;
  }

  private Server web(Path home) throws Exception {
    Server web = new Server();
    ServerConnector connector = new ServerConnector(web);
    connector.setHost(InetAddress.getLoopbackAddress().getHostAddress());
    connector.setPort(port);
    web.addConnector(connector);
    WebAppContext context = new WebAppContext(web, "", "/");
    context.setResourceBase(Files.createDirectories(home.resolve("www")).toString());
    context.setTempDirectory(home.resolve("jetty").toFile());
    WebSocketServerContainerInitializer.configureContext(context);
    context.addServlet(new ServletHolder(new RootServlet()), "/*");
    context.getServletContext().setAttribute("bimserver", server);
    return web;
  }

  private void setUp(List<Path> plugins) throws Exception {
    ServiceMap system = system();
    system
        .get(AdminInterface.class)
        .setup(address().toString(), "test", "test", "", "Administrator", ADMIN, PASSWORD);
    SettingsInterface settings = system.get(SettingsInterface.class);
    // There is no engine for shapes here, and none is needed.
    settings.setGenerateGeometryOnCheckin(false);
    settings.setCacheOutputFiles(false);
    settings.setPluginStrictVersionChecking(false);
    for (Path plugin : plugins) {
      system
          .get(PluginInterface.class)
          .installPluginBundleFromFile(
              new DataHandler(new FileDataSource(plugin.toFile())), true, true);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket()) {
      socket.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
      return socket.getLocalPort();
    }
  }

  /** From where the server takes its version; nothing else is needed. */
  private static final class Resources extends ResourceFetcher {
    private static final String POM =
        "<project><modelVersion>4.0.0</modelVersion><groupId>test</groupId>"
            + "<artifactId>test</artifactId><version>1.5.186</version></project>";

    @Override
    public byte[] getData(String key) {
      return key.equals("pom.xml") ? POM.getBytes(StandardCharsets.US_ASCII) : null;
    }

    @Override
    public boolean isDirectory(String key) {
      return false;
    }

    @Override
    public Set<String> listKeys(String key) {
      return Set.of();
    }
  }

  private record Web(Server jetty) implements EmbeddedWebServerInterface {
    @Override
    public void start() {
      try {
        jetty.start();
      } catch (Exception e) {
        throw new IllegalStateException(e);
      }
    }

    @Override
    public void shutdown() {
      try {
        jetty.stop();
      } catch (Exception e) {
        throw new IllegalStateException(e);
      }
    }

    @Override
    public void setResourceBase(String base) {}
  }
}
