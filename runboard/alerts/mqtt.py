"""Hears machines and buttons by MQTT. It subscribes and listens; it never publishes, so nothing is ever switched from here."""

import logging
import secrets
import ssl
from collections.abc import Callable
from typing import Any

from paho.mqtt.client import Client, ConnectFlags, DisconnectFlags, MQTTMessage
from paho.mqtt.enums import CallbackAPIVersion
from paho.mqtt.properties import Properties
from paho.mqtt.reasoncodes import ReasonCode

from runboard.floor.keeping.broker import Broker
from runboard.run.refusal import NotStored, Refused

_log = logging.getLogger("runboard")
_LONGEST_WAIT_SECONDS = 60


class MqttEar:
    """One connection to one broker, begun anew whenever it is lost. ``take`` gets each message: topic and payload."""

    def __init__(self, take: Callable[[str, bytes], object]) -> None:
        self._take = take
        self._client: Client | None = None
        self._topics: list[str] = []
        self._said = "off"

    def said(self) -> str:
        """How it stands: off, connecting, connected, lost, or refused."""
        return self._said

    def listen(self, broker: Broker) -> None:
        """Listen to this broker from now on; to none where it is off."""
        self.stop()
        if not broker.on:
            return
        self._topics = sorted({topic for topic in (*broker.topics.values(), *broker.presses.values()) if topic})
        client = Client(CallbackAPIVersion.VERSION2, client_id=f"runboard-{secrets.token_hex(4)}")
        if broker.user:
            client.username_pw_set(broker.user, broker.password)
        if broker.tls:
            client.tls_set_context(ssl.create_default_context())
        client.reconnect_delay_set(1, _LONGEST_WAIT_SECONDS)
        client.on_connect, client.on_disconnect, client.on_message = self._connected, self._lost, self._heard
        self._client, self._said = client, "connecting"
        client.connect_async(broker.host, broker.port)
        client.loop_start()

    def stop(self) -> None:
        """Listen no more."""
        client, self._client, self._said = self._client, None, "off"
        if client is not None:
            client.disconnect()
            client.loop_stop()

    def _connected(
        self, client: Client, userdata: Any, flags: ConnectFlags, code: ReasonCode, properties: Properties | None
    ) -> None:
        if client is not self._client:  # it was stopped while its connection was being made
            return
        if code.is_failure:
            self._said = "refused"
            _log.warning("the MQTT broker refused the connection: %s", code)
            return
        self._said = "connected"
        if self._topics:
            client.subscribe([(topic, 1) for topic in self._topics])

    def _lost(
        self, client: Client, userdata: Any, flags: DisconnectFlags, code: ReasonCode, properties: Properties | None
    ) -> None:
        if client is self._client and self._said != "refused":
            self._said = "lost"

    def _heard(self, client: Client, userdata: Any, message: MQTTMessage) -> None:
        try:
            self._take(message.topic, bytes(message.payload))
        except Refused as refused:
            _log.warning("a message on %s is no reading: %s", message.topic, refused.code)
        except NotStored as failed:
            _log.error("what was heard on %s was not stored: %s", message.topic, failed.why)
        except Exception:  # noqa: BLE001 - whatever it is, the next message is heard
            _log.exception("what was heard on %s could not be taken", message.topic)
