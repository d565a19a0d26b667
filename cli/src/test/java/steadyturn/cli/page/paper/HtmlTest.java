package steadyturn.cli.page.paper;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expect: exactly these letters; the five names are those of XML 1.0 (W3C 2008), section 4.6. */
class HtmlTest {

  @ParameterizedTest
  @CsvSource(
      quoteCharacter = '~',
      value = {
        "<, &lt;",
        ">, &gt;",
        "&, &amp;",
        "\", &quot;",
        "&lt;, &amp;lt;",
        "a<b>&c, a&lt;b&gt;&amp;c"
      })
  void whatWouldBeMarkupIsEscapedInTextAndInAttributes(String given, String expected) {
    assertThat(Html.escaped(given)).isEqualTo(expected);
    assertThat(new Html().words(given)).hasToString(expected);
    assertThat(new Html().element("p", given, "title", given))
        .hasToString("<p title=\"" + expected + "\">" + expected + "</p>");
    assertThat(new Html().empty("line", "class", given))
        .hasToString("<line class=\"" + expected + "\"/>");
  }

  @Test
  void aNameThatIsAScriptStaysAName() {
    // Given: a player's label from a file that another wrote. Expect: no tag of theirs.
    String name = "<script>alert('x')</script>";
    assertThat(new Html().open("h1").words(name).close("h1"))
        .hasToString("<h1>&lt;script&gt;alert('x')&lt;/script&gt;</h1>");
  }

  @Test
  void partsAndRawMarkupGoInAsTheyAre() {
    Html inner = new Html().element("b", "1 < 2");
    assertThat(new Html().open("p", "id", "a", "class", "b").part(inner).raw("<hr>").close("p"))
        .hasToString("<p id=\"a\" class=\"b\"><b>1 &lt; 2</b><hr></p>");
  }
}
