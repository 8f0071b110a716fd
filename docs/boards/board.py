"""Sends the temperature of one 1-wire probe to glasstide, in MicroPython, every quarter of an hour."""
import json
import time

WIFI_NAME = "your network"
WIFI_PASSWORD = "its password"
BROKER = "192.168.1.20"  # the machine glasstide runs on
PLACE = "lean-to"  # id of your place, from its page
SENSOR = "bench"  # lower-case letters, digits, hyphens
PASSWORD = "from the page People and boards"
PROBE_PIN = 4
EVERY_SECONDS = 900


def topic():
    return "glasstide/%s/readings/%s" % (PLACE, SENSOR)


def payload(celsius):
    """JSON for a reading; None for what is no temperature: -127 and 85 come from a probe that lost contact."""
    if celsius is None or not -55 < celsius < 84.9:
        return None
    return json.dumps({"temperatureC": round(celsius, 2)})


def read_celsius():
    import ds18x20
    import machine
    import onewire

    probes = ds18x20.DS18X20(onewire.OneWire(machine.Pin(PROBE_PIN)))
    found = probes.scan()
    if not found:
        return None
    probes.convert_temp()
    time.sleep_ms(750)
    return probes.read_temp(found[0])


def join_wifi():
    import network

    wifi = network.WLAN(network.STA_IF)
    wifi.active(True)
    if not wifi.isconnected():
        wifi.connect(WIFI_NAME, WIFI_PASSWORD)
    for _ in range(30):
        if wifi.isconnected():
            return True
        time.sleep(1)
    return False


def send(message):
    from umqtt.simple import MQTTClient

    # A client name no other board has; name and password as the page People and boards shows them.
    name = "%s/%s" % (PLACE, SENSOR)
    client = MQTTClient(name.replace("/", "-"), BROKER, port=1883, user=name, password=PASSWORD)
    client.connect()
    client.publish(topic(), message, retain=False, qos=1)
    client.disconnect()


def main():
    while True:
        try:
            message = payload(read_celsius())
            if message and join_wifi():
                send(message)
        except Exception as error:  # no network, no broker, a probe misread: try again next time
            print("not sent:", error)
        time.sleep(EVERY_SECONDS)


if __name__ == "__main__":
    main()
