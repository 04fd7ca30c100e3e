"""How machines are heard, and how an alert leaves the pages, put together."""

from dataclasses import dataclass
from pathlib import Path

from runboard.alerts.climb import Climber
from runboard.alerts.mqtt import MqttEar
from runboard.alerts.outside import Outside
from runboard.alerts.push import Push, Pusher, PushMessage
from runboard.alerts.push_service import PushKey, post
from runboard.alerts.speaker import Speaker
from runboard.background.turns import Turns
from runboard.floor.keeping.broker import read_broker, take_message
from runboard.floor.keeping.outside import channels, read_steps
from runboard.floor.keeping.signals import Ears, settle_signals
from runboard.floor.looking.listening import pushed_to
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.lan import private_file
from runboard.run.calls.climb import Steps
from runboard.run.calls.dues import Due
from runboard.run.log.event import write_moment
from runboard.store.open import Store
from runboard.words.alert import alert_words

# Seconds between two looks at what has to climb, and whether a machine has settled.
EVERY = 2.0


@dataclass(frozen=True)
class Leaving:
    """How machines are heard, and how an alert that nobody answers leaves the pages: outside, and by this computer."""

    ears: Ears
    mqtt: MqttEar
    outside: Outside
    speaker: Speaker
    climber: Climber
    push: Push
    push_key: PushKey
    pusher: Pusher
    beat: Turns

    def start(self) -> None:
        """Begin to listen and to look."""
        self.outside.start()
        self.push.start()
        self.beat.start()
        self.mqtt.listen(read_broker(self.ears))

    def stop(self) -> None:
        """End every thread of them."""
        self.mqtt.stop()
        self.beat.stop()
        self.outside.stop()
        self.push.stop()


def prepare_leaving(store: Store, workshop: Workshop, data: Path, *, is_demo: bool, push_near: bool) -> Leaving:
    """Put it together; nothing runs yet. A demo does not sound by itself on somebody's computer."""
    usual = Steps(computer=None) if is_demo else Steps()
    workshop.steps = read_steps(store.settings, usual)
    ears = Ears(workshop, store.sensors, store.settings)
    outside, speaker = Outside(store.settings, workshop.clock), Speaker()

    def words_of(due: Due) -> tuple[str, str]:
        with workshop.lock:
            catch_up(workshop)
            book, state = workshop.book, workshop.ledger.state
        return alert_words(state, book, due, workshop.clock.now())

    def send(due: Due) -> None:
        outside.send(channels(store.settings), *words_of(due))

    climber = Climber(store.dues, workshop.clock, lambda: workshop.steps, send, lambda: speaker.play())
    mqtt = MqttEar(lambda topic, payload: take_message(ears, read_broker(ears), topic, payload))
    key = PushKey(data, private_file.write_first)
    phones = Push(store.push, store.settings, workshop.clock, lambda phone, what: post(key, phone, what, push_near))

    def push_due(due: Due) -> None:
        says, _ = words_of(due)
        at = write_moment(due.due_at)
        for device in pushed_to(workshop, due):
            phones.send(PushMessage(due.id, says, at, device, wanted=lambda: store.dues.is_unanswered(due)))

    pusher = Pusher(store.dues, workshop.clock, lambda: workshop.steps, push_due)
    beat = Turns(
        "looking after alerts",
        lambda: settle_signals(ears),
        pusher.turn,
        climber.turn,
        every=EVERY,
        rest=0,
        first=EVERY,
    )
    return Leaving(ears, mqtt, outside, speaker, climber, phones, key, pusher, beat)
