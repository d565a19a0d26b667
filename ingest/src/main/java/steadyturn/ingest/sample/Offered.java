package steadyturn.ingest.sample;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks the doors for projects outside: these types, and what their public methods take and give,
 * may be built upon, and CHANGELOG.md tells when one changes. Everything else is public for the
 * other rooms of this house only.
 */
@Documented
@Retention(RetentionPolicy.CLASS)
@Target(ElementType.TYPE)
public @interface Offered {}
