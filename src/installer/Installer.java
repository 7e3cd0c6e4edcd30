import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import javax.imageio.ImageIO;

/**
 * Makes what a player installs, for the system that it runs on, out of the jar: a program with a
 * Java runtime of its own. On Linux a .deb and a plain archive, on Windows an .msi and on macOS a
 * .dmg; the last two are written by what jpackage's manual says and were never tried.
 *
 * <pre>java Installer.java JAR VERSION SOURCE_FOLDER OUT_FOLDER</pre>
 */
final class Installer {
  private static final String NAME = "neckway";

  /** What the jar asks of Java (jdeps), and words and dates of other languages. */
  private static final String MODULES =
      "java.base,java.desktop,java.sql,jdk.jfr,jdk.unsupported,jdk.localedata";

  private static final String WINDOW_SECONDS = "10";

  private static final int[] ICON_PIXELS = {48, 64, 128, 256, 512};

  private final Path jar;
  private final String version;
  private final Path source;
  private final Path out;

  private Installer(Path jar, String version, Path source, Path out) {
    this.jar = jar;
    this.version = version;
    this.source = source;
    this.out = out;
  }

  public static void main(String[] args) throws Exception {
    Path out = Path.of(args[3]).toAbsolutePath();
    delete(out);
    Files.createDirectories(out);
    new Installer(
            Path.of(args[0]).toAbsolutePath(),
            args[1],
            Path.of(args[2]).toAbsolutePath(),
            out)
        .make();
  }

  private void make() throws Exception {
    String system = System.getProperty("os.name").toLowerCase(Locale.ROOT);
    Path input = Files.createDirectories(out.resolve("input"));
    Files.copy(jar, input.resolve(NAME + ".jar"));
    if (system.contains("win")) {
      Path icon = out.resolve(NAME + ".ico");
      Files.write(icon, ico(png(256)));
      packaged("msi", input, icon, "--win-menu", "--win-shortcut", "--win-console");
    } else if (system.contains("mac")) {
      Path icon = out.resolve(NAME + ".icns");
      Files.write(icon, icns(png(512)));
      packaged("dmg", input, icon);
    } else {
      linux(input);
    }
    delete(input);
  }

  /** By jpackage alone. */
  private void packaged(String type, Path input, Path icon, String... more) throws Exception {
    Path associated = out.resolve("drill.properties");
    Files.writeString(
        associated,
        "extension=drill.json\nmime-type=application/x-neckway-drill+json\n"
            + "description=Neckway drill\n");
    List<String> command = jpackage(type, input, icon);
    command.addAll(List.of("--file-associations", associated.toString()));
    command.addAll(List.of("--license-file", source.resolve("LICENSE").toString()));
    command.addAll(List.of(more));
    run(command);
    Files.delete(associated);
    Files.delete(icon);
  }

  private List<String> jpackage(String type, Path input, Path icon) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "jpackage").toString());
    command.addAll(List.of("--type", type, "--name", NAME, "--app-version", version));
    command.addAll(List.of("--input", input.toString(), "--dest", out.toString()));
    command.addAll(List.of("--main-jar", NAME + ".jar", "--main-class", "neckway.cli.Main"));
    command.addAll(List.of("--icon", icon.toString(), "--add-modules", MODULES));
    command.addAll(List.of("--jlink-options", "--strip-debug --no-header-files --no-man-pages --generate-cds-archive"));
    command.addAll(
        List.of("--description", "Coach for moving between scale shapes on the guitar"));
    return command;
  }

  private void linux(Path input) throws Exception {
    Path icon = out.resolve(NAME + ".png");
    Files.write(icon, png(512));
    run(jpackage("app-image", input, icon));
    Files.delete(icon);
    Path image = out.resolve(NAME);
    Files.copy(source.resolve("LICENSE"), image.resolve("LICENSE"));
    Path papers = out.resolve("papers");
    run(List.of(java(), "-cp", jar.toString(), "neckway.cli.Papers", papers.toString()));
    run(
        List.of(
            "tar",
            "--sort=name",
            "--owner=0",
            "--group=0",
            "--numeric-owner",
            "-C",
            out.toString(),
            "-czf",
            out.resolve(NAME + "-" + version + "-linux-" + machine() + ".tar.gz").toString(),
            NAME));
    deb(image, papers);
    delete(image);
    delete(papers);
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  private static String machine() throws Exception {
    return told(List.of("dpkg", "--print-architecture")).strip();
  }

  /** The package of Debian and its kin. */
  private void deb(Path image, Path papers) throws Exception {
    Path root = out.resolve("deb");
    Path here = root.resolve("opt/" + NAME);
    copy(image, here);
    Path app = here.resolve("lib/app");
    Files.write(app.resolve("classes.lst"), classes(papers));
    for (int pixels : ICON_PIXELS) {
      String folder = "usr/share/icons/hicolor/" + pixels + "x" + pixels + "/apps/";
      Files.write(made(root, folder + NAME + ".png"), png(pixels));
    }
    Path linux = source.resolve("src/installer/linux");
    Files.copy(
        linux.resolve(NAME + ".desktop"),
        made(root, "usr/share/applications/" + NAME + ".desktop"));
    Files.copy(
        linux.resolve(NAME + ".xml"), made(root, "usr/share/mime/packages/" + NAME + ".xml"));
    Files.write(
        made(root, "usr/share/man/man1/" + NAME + ".1.gz"),
        zipped(Files.readAllBytes(papers.resolve(NAME + ".1"))));
    Files.copy(
        papers.resolve(NAME + ".bash"),
        made(root, "usr/share/bash-completion/completions/" + NAME));
    Files.copy(
        source.resolve("LICENSE"), made(root, "usr/share/doc/" + NAME + "/copyright"));
    // not jpackage's launcher: it asks dpkg what it is at every start, which takes 0.2 s
    program(linux.resolve(NAME), made(root, "usr/bin/" + NAME));
    Files.writeString(made(root, "DEBIAN/control"), control(root));
    for (String script : List.of("postinst", "prerm")) {
      program(linux.resolve(script), made(root, "DEBIAN/" + script));
    }
    run(
        List.of(
            "dpkg-deb",
            "--root-owner-group",
            "--build",
            root.toString(),
            out.resolve(NAME + "_" + version + "_" + machine() + ".deb").toString()));
    delete(root);
  }

  private static void program(Path from, Path to) throws IOException {
    Files.copy(from, to);
    Files.setPosixFilePermissions(to, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private String control(Path root) throws Exception {
    long bytes;
    try (Stream<Path> files = Files.walk(root)) {
      bytes = files.filter(Files::isRegularFile).mapToLong(f -> f.toFile().length()).sum();
    }
    return String.join(
            "\n",
            "Package: " + NAME,
            "Version: " + version,
            "Architecture: " + machine(),
            "Maintainer: the makers of Neckway <neckway@localhost>",
            "Section: sound",
            "Priority: optional",
            "Installed-Size: " + bytes / 1024,
            "Depends: " + String.join(", ", packages(root)),
            "Description: Coach for moving between scale shapes on the guitar",
            " Listens to a guitarist practise moving between the pentatonic shapes, live or in",
            " a recording, and says what happened: right and wrong notes, the shifts, the time.",
            " It brings its own Java runtime.")
        + "\n";
  }

  /** The packages whose libraries the runtime and the window's native parts are linked to. */
  private Set<String> packages(Path root) throws Exception {
    Path natives = Files.createDirectories(out.resolve("natives"));
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : file.stream().filter(e -> e.getName().endsWith(".so")).toList()) {
        // those for other machines lie in folders, the window's own at the top
        if (!entry.getName().contains("/")) {
          try (InputStream in = file.getInputStream(entry)) {
            Files.copy(in, natives.resolve(entry.getName()));
          }
        }
      }
    }
    List<Path> linked = new ArrayList<>();
    for (Path folder : List.of(root.resolve("opt"), natives)) {
      try (Stream<Path> files = Files.walk(folder)) {
        files.filter(f -> f.toString().endsWith(".so")).sorted().forEach(linked::add);
      }
    }
    Set<String> libraries = new TreeSet<>();
    for (Path each : linked) {
      // of the older toolkit the window has a part too, which is not used
      if (!each.toString().contains("gtk2") && !each.toString().contains("avplugin")) {
        told(List.of("ldd", each.toString()))
            .lines()
            .filter(line -> line.contains("=> /"))
            .map(line -> line.replaceAll(".*=> (\\S+).*", "$1"))
            .filter(library -> !library.startsWith(root.toString()))
            .forEach(libraries::add);
      }
    }
    Set<String> packages = new TreeSet<>();
    for (String library : libraries) {
      String name = Path.of(library).getFileName().toString();
      told(List.of("dpkg", "-S", "*/" + name))
          .lines()
          .filter(line -> line.endsWith("/" + name))
          .map(line -> line.substring(0, line.indexOf(':')))
          .findFirst()
          .ifPresent(packages::add);
    }
    delete(natives);
    return packages;
  }

  /**
   * The classes to put in the archive: Java's own usual ones, those of the first screen, and those
   * that some commands load.
   */
  private List<String> classes(Path papers) throws Exception {
    Set<String> names = new LinkedHashSet<>();
    List<List<String>> commands =
        List.of(
            List.of("map", "--key", "A minor", "--shapes", "minor,major"),
            List.of(
                "perform", "--key", "A minor", "--shapes", "minor", "--seed", "1", "--out",
                papers.resolve("take.wav").toString()),
            List.of(
                "review", papers.resolve("take.wav").toString(), "--key", "A minor", "--shapes",
                "minor"),
            List.of("reach", "--data", papers.resolve("data").toString()),
            List.of("plan", "--data", papers.resolve("data").toString()));
    for (List<String> command : commands) {
      Path list = papers.resolve("loaded.lst");
      List<String> whole = new ArrayList<>();
      whole.addAll(
          List.of(java(), "-XX:DumpLoadedClassList=" + list, "-jar", jar.toString()));
      whole.addAll(command);
      run(whole);
      names.addAll(Files.readAllLines(list));
    }
    names.addAll(window(papers));
    try (JarFile file = new JarFile(jar.toFile());
        InputStream in =
            file.getInputStream(file.getEntry("neckway/desk/app/first-classes.txt"))) {
      new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .map(name -> name.replace('.', '/'))
          .forEach(names::add);
    }
    return names.stream().filter(n -> !n.startsWith("#")).collect(Collectors.toList());
  }

  /** What the window loads as it opens; nothing where there is no virtual display to open it on. */
  private List<String> window(Path papers) throws Exception {
    Path list = papers.resolve("window.lst");
    Path home = Files.createDirectories(papers.resolve("home"));
    ProcessBuilder window =
        new ProcessBuilder(
                "xvfb-run",
                "--auto-servernum",
                "timeout",
                WINDOW_SECONDS,
                java(),
                "-XX:DumpLoadedClassList=" + list,
                "-jar",
                jar.toString())
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD);
    for (String folder : List.of("HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME")) {
      window.environment().put(folder, home.toString());
    }
    try {
      window.start().waitFor();
    } catch (IOException e) {
      System.err.println("xvfb-run is not there: the window will start 0.1 s later");
    }
    return Files.exists(list) ? Files.readAllLines(list) : List.of();
  }

  private static Path made(Path root, String name) throws IOException {
    Path file = root.resolve(name);
    Files.createDirectories(file.getParent());
    return file;
  }

  private static byte[] zipped(byte[] bytes) throws IOException {
    ByteArrayOutputStream zipped = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(zipped)) {
      out.write(bytes);
    }
    return zipped.toByteArray();
  }

  // The icon: two stands of the hand on the strings, and the way from one to the other.

  private static byte[] png(int pixels) throws IOException {
    BufferedImage image = new BufferedImage(pixels, pixels, BufferedImage.TYPE_INT_ARGB);
    Graphics2D pen = image.createGraphics();
    pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    pen.scale(pixels / 64.0, pixels / 64.0);
    pen.setColor(new Color(0xfbfaf6));
    pen.fill(new RoundRectangle2D.Double(1, 1, 62, 62, 16, 16));
    pen.setColor(new Color(0x9a968c));
    pen.setStroke(new BasicStroke(1.6f));
    for (double y = 30; y < 56; y += 11) {
      pen.draw(new Line2D.Double(7, y, 57, y));
    }
    pen.setColor(new Color(0x1c1c1a));
    pen.setStroke(new BasicStroke(3.4f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    pen.draw(new Arc2D.Double(24, 12, 22, 34, 12, 156, Arc2D.OPEN));
    dots(pen, new Color(0x0b5c94), new double[][] {{13, 52}, {13, 41}, {24, 30}});
    dots(pen, new Color(0xa8500c), new double[][] {{46, 30}, {51, 41}, {40, 52}});
    pen.dispose();
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(image, "png", png);
    return png.toByteArray();
  }

  private static void dots(Graphics2D pen, Color color, double[][] at) {
    pen.setColor(color);
    for (double[] dot : at) {
      pen.fill(new Ellipse2D.Double(dot[0] - 4.4, dot[1] - 4.4, 8.8, 8.8));
    }
  }

  /** A Windows icon that holds one PNG of 256 pixels. */
  private static byte[] ico(byte[] png) {
    ByteBuffer bytes = ByteBuffer.allocate(22 + png.length).order(ByteOrder.LITTLE_ENDIAN);
    bytes.putShort((short) 0).putShort((short) 1).putShort((short) 1);
    bytes.put((byte) 0).put((byte) 0).put((byte) 0).put((byte) 0);
    bytes.putShort((short) 1).putShort((short) 32).putInt(png.length).putInt(22);
    return bytes.put(png).array();
  }

  /** A macOS icon that holds one PNG of 512 pixels. */
  private static byte[] icns(byte[] png) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    DataOutputStream data = new DataOutputStream(bytes);
    data.writeBytes("icns");
    data.writeInt(16 + png.length);
    data.writeBytes("ic09");
    data.writeInt(8 + png.length);
    data.write(png);
    return bytes.toByteArray();
  }

  // Files and programs.

  private static void run(List<String> command) throws Exception {
    told(command);
  }

  /** What a program prints; its own words are in the fault where it fails. */
  private static String told(List<String> command) throws Exception {
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (process.waitFor() != 0 && !command.get(0).equals("ldd")) {
      throw new IOException(String.join(" ", command) + ": " + said);
    }
    return said;
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> files = Files.walk(from)) {
      for (Path file : files.toList()) {
        Path copied = to.resolve(from.relativize(file).toString());
        Files.createDirectories(copied.getParent());
        if (!Files.isDirectory(file)) {
          Files.copy(file, copied, StandardCopyOption.COPY_ATTRIBUTES);
        }
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (Files.exists(folder)) {
      try (Stream<Path> files = Files.walk(folder)) {
        for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(file);
        }
      }
    }
  }
}
