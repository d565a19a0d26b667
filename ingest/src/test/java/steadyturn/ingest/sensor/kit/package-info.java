/**
 * The conformance kit for units: whoever writes a {@link steadyturn.ingest.sensor.SensorAdapter}
 * extends {@link AdapterKit}, hands over a {@link GoldenRecording} and inherits every {@link
 * Promise}. A broken promise says what is probably wrong. Also in the module's test-jar.
 */
package steadyturn.ingest.sensor.kit;
