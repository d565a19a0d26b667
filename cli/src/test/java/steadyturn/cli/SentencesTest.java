package steadyturn.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ThrowTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import steadyturn.cli.words.Words;

/**
 * Sentences that a teacher or a player reads live in the bundle, not in code. Looked at: the string
 * literals of the rooms that speak to people. Left out: messages of exceptions, annotations (usage
 * of commands), patterns, and the classes named in {@link #OTHERS}.
 */
class SentencesTest {

  private static final Path HOME = Path.of("..").toAbsolutePath().normalize();

  private static final List<String> ROOMS =
      List.of(
          "ingest/src/main/java/steadyturn/ingest/quality",
          "fusion/src/main/java/steadyturn/fusion/wear",
          "analysis/src/main/java/steadyturn/analysis",
          "cli/src/main/java/steadyturn/cli/command/lesson",
          "cli/src/main/java/steadyturn/cli/command/live",
          "cli/src/main/java/steadyturn/cli/command/mat",
          "cli/src/main/java/steadyturn/cli/command/calibrate",
          "cli/src/main/java/steadyturn/cli/lesson",
          "cli/src/main/java/steadyturn/cli/live",
          "cli/src/main/java/steadyturn/cli/page",
          "cli/src/main/java/steadyturn/cli/output");

  /**
   * Not for teacher or player: the names of accuracy cases and of arguments of the simulator, the
   * columns of data files, the reports of unit calibration and orientation.
   */
  private static final Set<String> OTHERS =
      Set.of(
          "Studies",
          "StudyCase",
          "Situation",
          "PelvisStudy",
          "SwingStudy",
          "WristStudy",
          "ComparisonStudy",
          "TwoWays",
          "LessonSpec",
          "MeasureColumns",
          "Derivatives",
          "CalibrationReport",
          "OrientationFiles");

  /** Two words of letters and a third of anything: a sentence, or a part of one. */
  private static final Pattern SENTENCE = Pattern.compile("(?s).*[a-z]{2,} [a-z]{2,}.*");

  /** One tag of a picture with its attributes. */
  private static final Pattern TAG = Pattern.compile("<[^<>]*>");

  /** The calls that ask the bundle for a text. */
  private static final Pattern SPEAKS = Pattern.compile("(Words\\.)?say|(.*\\.)?text");

  private static final int WORDS = 3;

  @Test
  void noRoomThatSpeaksToPeopleHasASentenceInItsCode() throws IOException {
    // Given: every source of these rooms. Expect: no literal of three words or more.
    List<String> found = new ArrayList<>();
    for (CompilationUnitTree source : parsed(sources(ROOMS))) {
      String name = Path.of(source.getSourceFile().getName()).getFileName().toString();
      if (!OTHERS.contains(name.replace(".java", ""))) {
        literals(source).stream()
            .filter(SentencesTest::isSentence)
            .forEach(text -> found.add(name + ": " + text));
      }
    }
    assertThat(found).isEmpty();
  }

  @Test
  void everyTextThatCodeAsksForIsInTheBundle() throws IOException {
    // Given: every call for a text with a whole key. Expect: more than 150, all in the
    // bundle; the other keys are put together at run time.
    List<String> keys = new ArrayList<>();
    for (CompilationUnitTree source : parsed(sources(List.of("cli")))) {
      keys.addAll(keys(source));
    }
    assertThat(keys).hasSizeGreaterThan(150).allMatch(Words.english()::has);
  }

  @Test
  void aSentenceInCodeWouldBeFound() {
    // Given: seven literals. Expect: the sentence alone, put together from two; no usage, no
    // message
    // of an exception, no key, no unit, no tag.
    String code =
        """
        class A {
          @B("usage of a command") String say(int n) {
            if (n < 0) { throw new IllegalArgumentException("n must be over zero"); }
            return n == 0 ? "hips.turn" : n == 1 ? "deg/s" : n == 2 ? "<p class='wide open'>" : "stand still " + "for two seconds";
          }
        }
        """;
    assertThat(literals(parsed(code)).stream().filter(SentencesTest::isSentence))
        .containsExactly("stand still for two seconds");
  }

  private static boolean isSentence(String text) {
    if (text.startsWith("default-src ")) {
      return false; // a content policy, for browsers
    }
    boolean said = SENTENCE.matcher(text).matches() && !TAG.matcher(text).matches();
    return said && text.strip().split("\\s+", -1).length >= WORDS;
  }

  private static List<Path> sources(List<String> folders) throws IOException {
    List<Path> all = new ArrayList<>();
    for (String folder : folders) {
      try (Stream<Path> files = Files.walk(HOME.resolve(folder))) {
        files
            .filter(file -> file.toString().endsWith(".java"))
            .filter(file -> file.toString().contains("/src/main/java/"))
            .forEach(all::add);
      }
    }
    assertThat(all).isNotEmpty();
    return all;
  }

  private static List<String> literals(CompilationUnitTree source) {
    List<String> found = new ArrayList<>();
    new TreeScanner<Void, List<String>>() {
      @Override
      public Void visitThrow(ThrowTree tree, List<String> into) {
        return null;
      }

      @Override
      public Void visitAnnotation(AnnotationTree tree, List<String> into) {
        return null;
      }

      @Override
      public Void visitNewClass(NewClassTree tree, List<String> into) {
        boolean exception = tree.getIdentifier().toString().endsWith("Exception");
        return exception ? null : super.visitNewClass(tree, into);
      }

      @Override
      public Void visitMethodInvocation(MethodInvocationTree call, List<String> into) {
        String name =
            call.getMethodSelect().toString(); // of wrong usage: a message of an exception
        boolean isOther = name.equals("Pattern.compile") || name.endsWith("console.wrongUsage");
        return isOther ? null : super.visitMethodInvocation(call, into);
      }

      @Override
      public Void visitLiteral(LiteralTree tree, List<String> into) {
        if (tree.getValue() instanceof String text) {
          into.add(text);
        }
        return null;
      }
    }.scan(source, found);
    return found;
  }

  private static List<String> keys(CompilationUnitTree source) {
    List<String> found = new ArrayList<>();
    new TreeScanner<Void, List<String>>() {
      @Override
      public Void visitMethodInvocation(MethodInvocationTree call, List<String> into) {
        if (SPEAKS.matcher(call.getMethodSelect().toString()).matches()) {
          wholeKeys(call.getArguments().get(0), into);
        }
        return super.visitMethodInvocation(call, into);
      }
    }.scan(source, found);
    return found;
  }

  /** A key, or the two of a choice between keys; one put together from parts is none. */
  private static void wholeKeys(ExpressionTree key, List<String> into) {
    if (key instanceof LiteralTree literal && literal.getValue() instanceof String text) {
      into.add(text);
    } else if (key instanceof ConditionalExpressionTree choice) {
      wholeKeys(choice.getTrueExpression(), into);
      wholeKeys(choice.getFalseExpression(), into);
    }
  }

  private static CompilationUnitTree parsed(String code) {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    JavaFileObject file =
        new SimpleJavaFileObject(URI.create("string:///A.java"), JavaFileObject.Kind.SOURCE) {
          @Override
          public CharSequence getCharContent(boolean ignored) {
            return code;
          }
        };
    return parsed(compiler, List.of(file)).iterator().next();
  }

  /** One compiler for all of them: a compiler each costs ten times the parsing. */
  private static Iterable<? extends CompilationUnitTree> parsed(List<Path> sources) {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    return parsed(
        compiler,
        compiler.getStandardFileManager(null, null, UTF_8).getJavaFileObjectsFromPaths(sources));
  }

  private static Iterable<? extends CompilationUnitTree> parsed(
      JavaCompiler compiler, Iterable<? extends JavaFileObject> files) {
    try {
      return ((JavacTask) compiler.getTask(null, null, null, List.of(), null, files)).parse();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
