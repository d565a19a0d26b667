package steadyturn.ingest.archive;

import java.time.LocalDate;

/**
 * That a player, or a parent for a child, agreed to be recorded.
 *
 * @param day when
 * @param by the parent's name; empty where the player agreed
 */
public record Consent(LocalDate day, String by) {}
