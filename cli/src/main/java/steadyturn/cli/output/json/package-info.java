/**
 * Results as JSON. In: results. Out: text that docs/formats.md describes. Start at {@link
 * JsonReport}. Computes nothing.
 */
@NullMarked
package steadyturn.cli.output.json;

import org.jspecify.annotations.NullMarked;
