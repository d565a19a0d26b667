/**
 * The bench for units that are not there: encoders of our protocols and serial lines that a program
 * plays. In: samples. Out: bytes as a unit would send them, with the faults asked for. Start at
 * {@link VirtualUnit}. Nothing that reads real units may look in here.
 */
@NullMarked
package steadyturn.ingest.lab;

import org.jspecify.annotations.NullMarked;
