/**
 * The web server of a lesson's page: files, events, requests for a change, and who may ask. In: a
 * {@link steadyturn.cli.live.Shown} that knows the lesson. Out: HTTP on this machine, or on the
 * local network where that was asked for. Knows nothing of golf. Start at {@link
 * steadyturn.cli.live.PageServer}.
 */
@NullMarked
package steadyturn.cli.live;

import org.jspecify.annotations.NullMarked;
