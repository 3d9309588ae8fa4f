package evenpair.demo.screens;

import evenpair.acoustics.FilterChain;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A sound device without hardware: a PulseAudio of its own, at 48 kHz in floats throughout, with an
 * output {@value #OUTPUT} and microphones {@value #MICROPHONES} behind it; a {@link KnownPath}
 * between them stands for the earphone on its couplers. Nothing of the system's own sound is
 * touched.
 */
final class VirtualSoundDevice implements AutoCloseable {
  static final String OUTPUT = "BenchOutput";
  static final String MICROPHONES = "CouplerMicrophones";
  static final String LEFT_MICROPHONE = "LeftMicrophone";
  static final String RIGHT_MICROPHONE = "RightMicrophone";

  /** What to do where a part is missing. */
  static final String MEND =
      "no PulseAudio found: install pulseaudio and pulseaudio-utils (apt-get install pulseaudio pulseaudio-utils)";

  private static final List<String> PROGRAMS = List.of("pulseaudio", "pactl", "parec", "pacat");

  /**
   * At another rate, or in 16-bit numbers, the server would convert what it carries. Should this
   * program be killed, both ends of the path end with it, and then the server by itself.
   */
  private static final String SETTINGS =
      """
      default-sample-rate = 48000
      alternate-sample-rate = 48000
      default-sample-format = float32le
      realtime-scheduling = yes
      high-priority = yes
      exit-idle-time = 20
      """;

  private static final String FORMAT = "rate=48000 format=float32le channels=2";

  /** The server answers in a fraction of a second; a busy machine may need longer. */
  private static final int PATIENCE_SECONDS = 30;

  private final Path folder;
  private final Map<String, String> environment = new HashMap<>(System.getenv());
  private final List<Process> processes = new ArrayList<>();
  private KnownPath path;
  private String microphones;

  private VirtualSoundDevice(Path folder) {
    this.folder = folder;
    environment.remove("PULSE_SERVER");
    environment.put("HOME", folder.resolve("home").toString());
    environment.put("XDG_CONFIG_HOME", folder.resolve("home/.config").toString());
    environment.put("XDG_RUNTIME_DIR", folder.resolve("run").toString());
  }

  static boolean canBeStarted() {
    String[] folders = System.getenv().getOrDefault("PATH", "").split(File.pathSeparator);
    return PROGRAMS.stream()
        .allMatch(
            program -> Stream.of(folders).anyMatch(at -> Files.isExecutable(Path.of(at, program))));
  }

  /**
   * @param left what happens to the sound between the left output and the left microphone
   */
  static VirtualSoundDevice start(FilterChain left, FilterChain right) {
    try {
      VirtualSoundDevice device =
          new VirtualSoundDevice(Files.createTempDirectory("evenpair-sound"));
      device.startServer();
      device.plugIn();
      device.connect(left, right);
      return device;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @return what a browser that is to use this device has in its environment
   */
  Map<String, String> environment() {
    return Map.copyOf(environment);
  }

  KnownPath path() {
    return path;
  }

  /** Takes the stereo microphones away, as a plug that is pulled. */
  void unplug() {
    run("pactl", "unload-module", microphones);
  }

  /** Puts them back. Browsers hide a sink's monitor; this shows it to them as microphones. */
  void plugIn() {
    microphones = microphone("mics", MICROPHONES, "");
    run("pactl", "set-default-source", "mics");
  }

  private void startServer() throws IOException {
    Path config = Files.createDirectories(folder.resolve("home/.config/pulse"));
    Files.writeString(config.resolve("daemon.conf"), SETTINGS);
    Files.createDirectories(
        folder.resolve("run"),
        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    start(
        new ProcessBuilder(
            "pulseaudio",
            "--daemonize=no",
            "-n",
            "-L",
            sink("bench", OUTPUT),
            "-L",
            sink("coupler", "Coupler"),
            "-L",
            "module-native-protocol-unix"));
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    while (!answers()) {
      if (System.nanoTime() > end) {
        throw new IllegalStateException("the sound server did not start; see " + log());
      }
    }
    run("pactl", "set-default-sink", "bench");
    microphone(
        "left",
        LEFT_MICROPHONE,
        " remix=no channels=1 channel_map=mono master_channel_map=front-left");
    microphone(
        "right",
        RIGHT_MICROPHONE,
        " remix=no channels=1 channel_map=mono master_channel_map=front-right");
  }

  private static String sink(String name, String words) {
    return "module-null-sink sink_name=%s %s sink_properties=device.description=%s"
        .formatted(name, FORMAT, words);
  }

  private String microphone(String name, String words, String more) {
    return run(
        "pactl",
        "load-module",
        "module-remap-source",
        "master=coupler.monitor source_name=%s%s source_properties=device.description=%s"
            .formatted(name, more, words));
  }

  private void connect(FilterChain left, FilterChain right) throws IOException {
    String[] form = {"--raw", "--format=float32le", "--rate=48000", "--channels=2"};
    Process played =
        start(
            command(
                form, "nice", "-n", "-10", "parec", "--device=bench.monitor", "--latency-msec=20"));
    // Who may not raise a priority is told so by nice, and the program runs all the same.
    // 250 ms in hand keep the sound whole when the machine is busy for a moment
    Process heard =
        start(
            command(form, "nice", "-n", "-10", "pacat", "--device=coupler", "--latency-msec=250"));
    path =
        new KnownPath(
            new BufferedInputStream(played.getInputStream()),
            new BufferedOutputStream(heard.getOutputStream()),
            left,
            right);
    Thread thread = new Thread(path, "known-path");
    thread.setDaemon(true);
    thread.setPriority(Thread.MAX_PRIORITY);
    thread.start();
  }

  private static ProcessBuilder command(String[] form, String... first) {
    List<String> all = new ArrayList<>(List.of(first));
    all.addAll(List.of(form));
    return new ProcessBuilder(all);
  }

  private Process start(ProcessBuilder command) throws IOException {
    command.environment().clear();
    command.environment().putAll(environment);
    Process process = command.redirectError(ProcessBuilder.Redirect.appendTo(log())).start();
    processes.add(process);
    return process;
  }

  private File log() {
    return folder.resolve("sound.log").toFile();
  }

  private boolean answers() {
    try {
      Process process = start(new ProcessBuilder("pactl", "info"));
      process.getInputStream().readAllBytes();
      return process.waitFor() == 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private String run(String... words) {
    try {
      Process process = start(new ProcessBuilder(words));
      String answer =
          new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
      if (process.waitFor() != 0) {
        throw new IllegalStateException(
            String.join(" ", words) + ": " + Files.readString(log().toPath()));
      }
      return answer;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    // the server last: the two ends of the path hang on it
    for (int i = processes.size() - 1; i >= 0; i--) {
      stop(processes.get(i));
    }
    try (Stream<Path> files = Files.walk(folder)) {
      files.sorted(Comparator.reverseOrder()).map(Path::toFile).forEach(File::delete);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void stop(Process process) {
    process.destroy();
    try {
      if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      process.destroyForcibly();
    }
  }
}
