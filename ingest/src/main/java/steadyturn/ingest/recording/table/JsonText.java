package steadyturn.ingest.recording.table;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Map;

/** JSON as we write it: members in the order given, two blanks of indent, one line end. */
public final class JsonText {

  private static final ObjectMapper JSON = new ObjectMapper();

  private JsonText() {}

  public static String of(Map<String, ?> members) {
    DefaultIndenter indent = new DefaultIndenter("  ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent);
    try {
      return JSON.writer(printer).writeValueAsString(members) + "\n";
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException("members cannot be written as JSON", e);
    }
  }
}
