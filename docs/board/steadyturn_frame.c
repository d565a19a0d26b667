#include "steadyturn_frame.h"

#include <string.h>

/* CRC-32 of Ethernet and zip (reflected polynomial 0xEDB88320), a half byte at a time. */
static uint32_t crc32(const uint8_t *bytes, size_t count) {
  static const uint32_t table[16] = {
      0x00000000u, 0x1DB71064u, 0x3B6E20C8u, 0x26D930ACu, 0x76DC4190u, 0x6B6B51F4u,
      0x4DB26158u, 0x5005713Cu, 0xEDB88320u, 0xF00F9344u, 0xD6D6A3E8u, 0xCB61B38Cu,
      0x9B64C2B0u, 0x86D3D2D4u, 0xA00AE278u, 0xBDBDF21Cu};
  uint32_t crc = 0xFFFFFFFFu;
  for (size_t i = 0; i < count; i++) {
    crc = table[(crc ^ bytes[i]) & 0x0F] ^ (crc >> 4);
    crc = table[(crc ^ (uint32_t)(bytes[i] >> 4)) & 0x0F] ^ (crc >> 4);
  }
  return ~crc;
}

static uint8_t *put16(uint8_t *to, uint16_t value) {
  *to++ = (uint8_t)value;
  *to++ = (uint8_t)(value >> 8);
  return to;
}

static uint8_t *put32(uint8_t *to, uint32_t value) {
  return put16(put16(to, (uint16_t)value), (uint16_t)(value >> 16));
}

static uint8_t *put_text(uint8_t *to, const char *text) {
  size_t length = strlen(text);
  if (length > STEADYTURN_LONGEST_TEXT) {
    length = STEADYTURN_LONGEST_TEXT;
  }
  *to++ = (uint8_t)length;
  memcpy(to, text, length);
  return to + length;
}

/* Consistent overhead byte stuffing and the ending zero. No frame is as long as a stuffed block may
   be (254 bytes), so that case does not arise. */
static size_t stuff(uint8_t *out, const uint8_t *plain, size_t count) {
  size_t code_at = 0;
  size_t n = 1;
  for (size_t i = 0; i < count; i++) {
    if (plain[i] == 0) {
      out[code_at] = (uint8_t)(n - code_at);
      code_at = n++;
    } else {
      out[n++] = plain[i];
    }
  }
  out[code_at] = (uint8_t)(n - code_at);
  out[n++] = 0;
  return n;
}

static size_t finish(uint8_t *out, uint8_t *plain, uint8_t *end) {
  end = put32(end, crc32(plain, (size_t)(end - plain)));
  return stuff(out, plain, (size_t)(end - plain));
}

size_t steadyturn_hello(uint8_t *out, uint16_t rate_hz, uint8_t range_g, uint16_t range_deg_s,
                        const char *name, const char *serial_number) {
  uint8_t plain[STEADYTURN_MOST_BYTES];
  uint8_t *at = plain;
  *at++ = 2;
  *at++ = 1;
  at = put16(at, rate_hz);
  *at++ = range_g;
  at = put16(at, range_deg_s);
  at = put_text(at, name);
  at = put_text(at, serial_number);
  return finish(out, plain, at);
}

size_t steadyturn_sample(uint8_t *out, uint16_t counter, uint32_t micros, uint8_t range_g,
                         uint16_t range_deg_s, const int16_t accel[3], const int16_t gyro[3]) {
  uint8_t plain[STEADYTURN_MOST_BYTES];
  uint8_t *at = plain;
  *at++ = 1;
  at = put16(at, counter);
  at = put32(at, micros);
  *at++ = range_g;
  at = put16(at, range_deg_s);
  for (int axis = 0; axis < 3; axis++) {
    at = put16(at, (uint16_t)accel[axis]);
  }
  for (int axis = 0; axis < 3; axis++) {
    at = put16(at, (uint16_t)gyro[axis]);
  }
  return finish(out, plain, at);
}
