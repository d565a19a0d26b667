/* The frames that Steadyturn calls binary-frame, for any small board: no board calls, no memory of
   its own. Byte by byte: docs/formats-live.md. */
#ifndef STEADYTURN_FRAME_H
#define STEADYTURN_FRAME_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Room for any frame on the wire, its ending zero included. */
#define STEADYTURN_MOST_BYTES 112

/* Longest name and serial number, bytes. */
#define STEADYTURN_LONGEST_TEXT 40

/* Who the unit is; send it at the start and then once a second. Texts end with a zero byte. Returns
   the number of bytes written. */
size_t steadyturn_hello(uint8_t *out, uint16_t rate_hz, uint8_t range_g, uint16_t range_deg_s,
                        const char *name, const char *serial_number);

/* One sample: counter (one more each time, wraps), the unit's clock in microseconds (wraps), ranges,
   and the values in 32768ths of them, x y z. Returns the number of bytes written. */
size_t steadyturn_sample(uint8_t *out, uint16_t counter, uint32_t micros, uint8_t range_g,
                         uint16_t range_deg_s, const int16_t accel[3], const int16_t gyro[3]);

#ifdef __cplusplus
}
#endif

#endif
