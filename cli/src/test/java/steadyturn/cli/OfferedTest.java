package steadyturn.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import steadyturn.ingest.sample.Offered;

/** What projects outside may build on is marked, is little, and is whole. */
final class OfferedTest {

  private static final JavaClasses HOUSE = House.classes();

  /** Our choice: about a tenth of the public types. */
  private static final int MOST_TYPES = 75;

  private static List<JavaClass> doors() {
    return HOUSE.stream().filter(c -> c.isAnnotatedWith(Offered.class)).toList();
  }

  /** The doors and all that can be reached through their public methods. */
  private static Set<String> behindTheDoors() {
    Set<String> reached = new TreeSet<>();
    Deque<JavaClass> open = new ArrayDeque<>(doors());
    while (!open.isEmpty()) {
      JavaClass next = open.pop();
      if (next.getPackageName().startsWith("steadyturn") && reached.add(next.getName())) {
        next.getCodeUnits().stream()
            .filter(unit -> unit.getModifiers().contains(JavaModifier.PUBLIC))
            .flatMap(OfferedTest::named)
            .map(JavaClass::getBaseComponentType)
            .forEach(open::add);
      }
    }
    return reached;
  }

  private static Stream<JavaClass> named(JavaCodeUnit unit) {
    Stream<JavaType> types =
        Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream());
    return types.flatMap(type -> type.getAllInvolvedRawTypes().stream());
  }

  @Test
  void whatIsBehindTheDoorsIsPublicAndLittle() {
    // Given: all types in the public signatures of the marked ones. Expect: each can be named from
    // outside, none but the encoder of a virtual unit is of the labs, and they stay few.
    Set<String> reached = behindTheDoors();
    assertThat(reached)
        .hasSizeLessThanOrEqualTo(MOST_TYPES)
        .allMatch(name -> HOUSE.get(name).getModifiers().contains(JavaModifier.PUBLIC));
    assertThat(reached.stream().filter(name -> name.contains(".lab.")))
        .containsExactly("steadyturn.ingest.lab.UnitEncoder");
  }

  @Test
  void developersAreToldOfEveryDoor() throws IOException {
    String page = Files.readString(Path.of("..", "DEVELOPERS.md"));
    assertThat(doors()).hasSizeGreaterThan(10);
    assertThat(doors()).allMatch(door -> page.contains("`" + door.getSimpleName() + "`"));
  }
}
