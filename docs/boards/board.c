/*
 * Sends the temperature of one probe to glasstide, in plain C99, for any board with an MQTT library.
 * Write the three functions below with what your board offers; nothing else here knows the board.
 */
#include <stdbool.h>
#include <stdio.h>

/* What you write for your board. */
bool read_celsius(double *celsius);                /* false: the probe did not answer */
bool mqtt_publish(const char *topic, const char *payload, int qos, bool retain);
void wait_seconds(unsigned seconds);

#define PLACE "lean-to"  /* id of your place, from its page */
#define SENSOR "bench"   /* lower-case letters, digits, hyphens */
#define EVERY_SECONDS 900

/*
 * Writes { "temperatureC": 19.40 } with whole numbers only, since many small boards print no floating point.
 * A value that is no temperature (also NaN) is not sent: glasstide bridges a gap, but would have to doubt a guess.
 */
bool reading_payload(double celsius, char *out, size_t size)
{
    if (!(celsius > -55.0 && celsius < 84.9)) return false; /* -127 and 85: a 1-wire probe that lost contact */
    long hundredths = (long)(celsius * 100.0 + (celsius < 0.0 ? -0.5 : 0.5));
    const char *sign = hundredths < 0 ? "-" : "";
    if (hundredths < 0) hundredths = -hundredths;
    int length = snprintf(out, size, "{ \"temperatureC\": %s%ld.%02ld }", sign, hundredths / 100, hundredths % 100);
    return length > 0 && (size_t)length < size;
}

bool send_reading(void)
{
    double celsius;
    char payload[48];
    if (!read_celsius(&celsius) || !reading_payload(celsius, payload, sizeof payload)) return false;
    /* QoS 1: the acknowledgement comes when the reading is on disk. Not retained: an old value is no new one. */
    return mqtt_publish("glasstide/" PLACE "/readings/" SENSOR, payload, 1, false);
}

void run(void)
{
    for (;;) {
        send_reading();
        wait_seconds(EVERY_SECONDS);
    }
}
