// A unit for little: an ESP32 board (the first kind, which has Bluetooth serial) and a six-axis chip
// of the MPU-6500 family on its I2C bus. Sends binary-frame over USB and Bluetooth at once.
// Wiring, battery and strap: README.md beside this file. Put the three files into one folder "board".
//
// The chip's registers are from memory of its public register map; try them with the table test in
// README.md before trusting a swing.
#include <BluetoothSerial.h>
#include <Wire.h>

#include "steadyturn_frame.h"

static const char *NAME = "pelvis";  // or lead_forearm, lead_hand
static const char *SERIAL_NUMBER = "B-001";
static const uint16_t RATE_HZ = 500;
static const uint8_t RANGE_G = 16;
static const uint16_t RANGE_DEG_S = 2000;

static const uint8_t CHIP = 0x68;
static BluetoothSerial bluetooth;
static uint16_t counter = 0;
static uint32_t helloAtMs = 0;

static void write(uint8_t reg, uint8_t value) {
  Wire.beginTransmission(CHIP);
  Wire.write(reg);
  Wire.write(value);
  Wire.endTransmission();
}

static bool read(uint8_t reg, uint8_t *to, uint8_t count) {
  Wire.beginTransmission(CHIP);
  Wire.write(reg);
  if (Wire.endTransmission(false) != 0 || Wire.requestFrom(CHIP, count) != count) {
    return false;
  }
  for (uint8_t i = 0; i < count; i++) {
    to[i] = Wire.read();
  }
  return true;
}

static void send(const uint8_t *bytes, size_t count) {
  Serial.write(bytes, count);
  if (bluetooth.hasClient()) {
    bluetooth.write(bytes, count);
  }
}

void setup() {
  Serial.begin(921600);
  bluetooth.begin(String("steadyturn-") + NAME);
  Wire.begin();
  Wire.setClock(400000);
  write(0x6B, 0x80);  // reset
  delay(100);
  write(0x6B, 0x01);  // clock of the gyroscope
  write(0x1A, 0x02);  // rates: 92 Hz
  write(0x1B, 0x18);  // 2000 deg/s
  write(0x1C, 0x18);  // 16 g
  write(0x1D, 0x02);  // accelerations: about 99 Hz
  write(0x19, 1000 / RATE_HZ - 1);
  write(0x38, 0x01);  // tells when a sample is ready
}

void loop() {
  uint8_t frame[STEADYTURN_MOST_BYTES];
  if (helloAtMs == 0 || millis() - helloAtMs >= 1000) {
    helloAtMs = millis();
    send(frame, steadyturn_hello(frame, RATE_HZ, RANGE_G, RANGE_DEG_S, NAME, SERIAL_NUMBER));
  }
  uint8_t ready;
  uint8_t raw[14];  // accelerations, temperature, rates; high byte first
  if (!read(0x3A, &ready, 1) || !(ready & 1)) {
    return;
  }
  uint32_t now = micros();
  if (!read(0x3B, raw, 14)) {
    return;  // the counter stays: a sample that was not read is seen as lost only by its time
  }
  int16_t accel[3];
  int16_t gyro[3];
  for (int axis = 0; axis < 3; axis++) {
    accel[axis] = (int16_t)((raw[2 * axis] << 8) | raw[2 * axis + 1]);
    gyro[axis] = (int16_t)((raw[8 + 2 * axis] << 8) | raw[9 + 2 * axis]);
  }
  send(frame, steadyturn_sample(frame, counter++, now, RANGE_G, RANGE_DEG_S, accel, gyro));
}
