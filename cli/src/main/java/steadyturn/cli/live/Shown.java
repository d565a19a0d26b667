package steadyturn.cli.live;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/** What a page shows and asks for. Called by any thread of the server. */
public interface Shown {

  /** What is told to a page that has just come. */
  List<Told> all();

  /**
   * Does what the page asks for.
   *
   * @param what its name
   * @param with what it needs
   * @return a sentence that says why it was not done; empty when it was
   */
  Optional<String> act(String what, JsonNode with);

  /** A whole page by its name, such as the one to send home. */
  Optional<String> document(String name);

  /** Something told to every page. */
  record Told(String event, ObjectNode data) {}
}
