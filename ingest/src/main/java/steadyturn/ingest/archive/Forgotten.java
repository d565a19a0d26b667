package steadyturn.ingest.archive;

import java.nio.file.Path;
import java.util.List;

/**
 * What was done to forget a player, and what a search of every file found afterwards.
 *
 * @param filesErased files of the player's own that are gone
 * @param rowsErased lines about the player that are gone from tables
 * @param textsChanged files of others in which the player's name was replaced
 * @param left files that still name the player: packed ones that were not made by this program
 */
public record Forgotten(int filesErased, int rowsErased, List<Path> textsChanged, List<Path> left) {

  public Forgotten {
    textsChanged = List.copyOf(textsChanged);
    left = List.copyOf(left);
  }

  /** Whether nothing is left. */
  public boolean isWhole() {
    return left.isEmpty();
  }
}
