/**
 * What every page is written and drawn with: markup, pictures as inline SVG, the colours, the style
 * sheet and the two type families. In: texts and coordinates on the paper. Out: HTML that needs
 * nothing else. Start at {@link Html}. Knows nothing of golf.
 */
@NullMarked
package steadyturn.cli.page.paper;

import org.jspecify.annotations.NullMarked;
