"""What the cautions say is pinned by phrases in four languages: a sentence whose meaning is turned round fails.

`safety_words.toml` names the phrases that must stand in each message. Words that turn a meaning ('never', 'not', 'a
pile', 'leave') may stand in such a phrase and nowhere else. Then every turn of a word that we could think of is made, in
every message, and each is seen to fail.
"""

import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.core.test_cautions import LANGUAGES, messages

PINNED = tomllib.loads((Path(__file__).parent / "safety_words.toml").read_text("utf-8"))

# Words that turn a meaning, or let somebody do what kills: outside a pinned phrase none of them may stand.
TURNING = {
    "en": "never no not nothing none without unless may can must always only piles? heaps? bins? pockets? dryers? indoors "
    "inside leave go alone unattended ignore optional off later afterwards open unsafe safe safely",
    "de": r"nie niemals nicht nichts kein\w* ohne außer darf dürfen kann können muss müssen immer nur haufen müll "
    r"hosentasche wäschetrockner trockner drinnen allein unbeaufsichtigt\w* egal aus später danach offen sicher gefahrlos",
    "es": "nunca no ni nada ning[uú]na? sin salvo puedes? pueden? debes? siempre solo mont[oó]n basura bolsillo secadora "
    "dentro interior solas? deja dejes déjala ignora opcional apagad[ao]s? después luego abiert[ao]s? segur[ao]",
    "fr": r"jamais non ne ni rien aucune? sans sauf peut peuvent pouvez devez toujours seulement tas poubelle poche "
    r"sèche-linge dedans intérieur seule? laissez laissez-la quittez ignorez facultatif arrêt après ouverte?s? sûr",
}  # fmt: skip

# (said, turned round). Each is tried wherever the left side stands as a word, and the right side back to the left.
TURNS = {
    "en": [
        ("never", "always"), ("never", ""), ("no", ""), ("no", "all"), ("not", ""), ("only", "also"), ("stay", "go"),
        ("watch", "rest"), ("on", "off"), ("shut", "open"), ("before", "after"), ("first", "last"), ("outdoors", "indoors"),
        ("single layer", "pile"), ("in the shade", "in the sun"), ("away from", "against"), ("in reach", "out of reach"),
        ("on the exit side", "on the far side"), ("clear", "full"), ("clear of", "close to"), ("tight", "loose"),
        ("key out", "key in"), ("held down", "held by hand"), ("in a holder", "in fingers"), ("everybody", "nobody"),
        ("wears", "takes off"), ("water", "sawdust"), ("lidded", "open"), ("metal", "plastic"), ("lid on", "lid off"),
        ("disconnect", "connect"), ("cool", "heat"), ("known", "unknown"), ("read", "skip"), ("emptied", "filled"),
        ("empty", "fill"), ("cold", "warm"), ("stop", "go on"), ("now", "later"), ("off", "on"), ("out", "in"),
        ("unplugged", "plugged in"), ("get out", "stay in"), ("call", "do not call"), ("air", "seal"), ("hot", "cold"),
        ("with care", "with force"), ("with two people", "alone"), ("draws", "hums"), ("tied back", "loose"),
        ("live", "dead"), ("somebody", "nobody"), ("the label", "nobody"), ("ask", "do not ask"), ("laid out", "put away"),
        ("use", "forget"), ("looked", "did not look"), ("read the", "forget the"), ("catch fire", "be left"),
        ("heat by itself", "be left"), ("fire or injury", "in doubt"), ("sharp", "blunt"), ("solvent in", "nothing in"),
        ("eyewear", "nothing"), ("checked", "skipped"),
        ("against", "with"), ("before the", "after the"), ("in earshot", "far off"), ("wet for longer", "dry"), ("work held", "work loose"), ("water or foam", "petrol"), ("nothing", "something"),
    ],
    "de": [
        ("nie", "immer"), ("nie", ""), ("keine", "alle"), ("keine", ""), ("kein", "ein"), ("nicht", ""), ("nur", "auch"),
        ("nein", "ja"), ("dabeibleiben", "weggehen"), ("dabeibleibt", "weggeht"), ("zusehen", "ausruhen"), ("an", "aus"),
        ("geschlossen", "offen"), ("zu", "auf"), ("auf", "ab"), ("vor", "nach"), ("bevor", "nachdem"), ("zuerst", "zuletzt"),
        ("draußen", "drinnen"), ("einzeln ausgebreitet", "auf einem haufen"), ("im schatten", "in der sonne"),
        ("weg von", "nahe an"), ("in reichweite", "außer reichweite"), ("des ausgangs", "der wand"), ("frei", "voll"),
        ("eng", "weit"), ("abgezogen", "eingesteckt"), ("fest", "lose"), ("in einer halterung", "in den fingern"),
        ("alle", "keine"), ("tragen", "ablegen"), ("wasser", "spänen"), ("mit deckel", "ohne deckel"),
        ("metalleimer", "papierkorb"), ("deckel drauf", "deckel ab"), ("abkühlen", "aufheizen"), ("bekannt", "unbekannt"),
        ("lesen", "weglegen"), ("leeren", "füllen"), ("geleert", "gefüllt"), ("leer", "voll"), ("kalt", "warm"),
        ("anhalten", "weiterlaufen lassen"), ("jetzt", "später"), ("aus", "an"), ("ausschalten", "einschalten"),
        ("hinausgehen", "dableiben"), ("anrufen", "abwarten"), ("lüften", "schließen"), ("heiß", "kalt"),
        ("vorsichtig", "kräftig"), ("zu zweit", "allein"), ("zieht", "brummt"), ("zusammengebunden", "offen"),
        ("ausstecken", "einstecken"), ("hingehen", "weggehen"), ("weg", "hin"), ("verlangt", "verbietet"),
        ("verlangen", "verbieten"), ("jemand", "niemand"), ("benutzen", "weglegen"), ("montiert", "abgenommen"),
        ("entzünden sich von selbst", "trocknen gut"), ("selbst erhitzen", "gut setzen"), ("scharfe", "runde"), ("spannung", "nichts"),
        ("fragen", "vergessen"), ("lösemittel", "nichts"), ("bereit", "fern"), ("feuer", "ruhe"), ("geprüft", "verzichtet"),
        ("angesehen", "vergessen"), ("nachsehen", "wegsehen"), ("den stecker ziehen", "den stecker lassen"),
        ("unbekanntes", "bekanntes"), ("länger nass", "kürzer nass"), ("gegen", "mit"), ("in rufweite", "weit weg"), ("hält länger nass", "trocknet schneller"), ("nichts", "etwas"), ("wasser oder schaum", "benzin"),
    ],
    "es": [
        ("nunca", "siempre"), ("nunca", ""), ("sin", "con"), ("no", ""), ("ni", "y"), ("ningún", "todo"), ("ninguna", "toda"),
        ("solo", "también"), ("quédate", "vete"), ("vigila", "descansa"), ("encendida", "apagada"), ("encendido", "apagado"),
        ("encendidos", "apagados"), ("cerrada", "abierta"), ("cerradas", "abiertas"), ("antes de", "después de"),
        ("primero", "por último"), ("al aire libre", "dentro"), ("en una sola capa", "en un montón"),
        ("a la sombra", "al sol"), ("lejos de", "junto a"), ("a mano", "lejos"), ("de la salida", "del fondo"),
        ("limpia", "sucia"), ("ajustadas", "sueltas"), ("apretada", "suelta"), ("quitada", "puesta"),
        ("en un soporte", "en los dedos"), ("todas", "ninguna de"), ("llevan", "dejan"), ("agua", "serrín"),
        ("con tapa", "sin tapa"), ("metálico", "de plástico"), ("puesta", "quitada"), ("puestas", "quitadas"),
        ("puestos", "quitados"), ("enfríe", "caliente"), ("conocido", "desconocido"), ("lee", "olvida"), ("vacía", "llena"),
        ("vacíala", "llénala"), ("vaciado", "lleno"), ("vacío", "lleno"), ("fríos", "calientes"), ("para", "sigue"),
        ("párala", "déjala"), ("ahora", "luego"), ("apaga", "enciende"), ("apagadas", "encendidas"), ("sal", "quédate"),
        ("llama al", "no llames al"), ("ventila", "cierra"), ("caliente", "frío"), ("con cuidado", "con fuerza"),
        ("entre dos personas", "a solas"), ("aspira", "zumba"), ("recogido", "suelto"), ("desenchufa", "enchufa"),
        ("desconecta", "conecta"), ("desconectadas", "conectadas"), ("desenchufadas", "enchufadas"), ("pide", "prohíbe"),
        ("piden", "prohíben"), ("alguien", "nadie"), ("usa", "deja"), ("sujeta", "suelta"), ("arder", "secarse"),
        ("calentarse", "posarse"), ("afilados", "romos"), ("tensión", "nada"), ("pregunta", "no preguntes"),
        ("disolvente", "nada"), ("listo", "lejos"), ("preparado", "guardado"), ("incendio", "calma"), ("curado", "mojado"),
        ("mira", "olvida"), ("mirado", "olvidado"), ("mírala", "olvídala"), ("corta", "da"), ("comprobado", "dicho"),
        ("limpio", "sucio"), ("ve ahora", "no vayas"), ("dedos lejos", "dedos cerca"), ("gafas", "nada"),
        ("protección auditiva", "nada"), ("ponte", "quítate"), ("prohibido", "permitido"), ("con presión", "sin presión"),
        ("contra el giro", "con el giro"), ("que te oiga", "que no te oiga"), ("mojado más tiempo", "seco"), ("nada", "algo"), ("agua o espuma", "gasolina"),
    ],
    "fr": [
        ("jamais", "toujours"), ("jamais", ""), ("sans", "avec"), ("ni", "et"), ("pas", ""), ("aucune", "toute"), ("aucun", "tout"),
        ("rien", "tout"), ("seulement", "aussi"), ("restez", "partez"), ("reste", "part"), ("surveillez", "dormez"),
        ("en marche", "à l'arrêt"), ("fermés", "ouverts"), ("fermée", "ouverte"), ("fermé", "ouvert"), ("avant", "après"),
        ("d'abord", "à la fin"), ("dehors", "dedans"), ("en une seule couche", "en tas"), ("à l'ombre", "au soleil"),
        ("loin", "près"), ("à portée", "au loin"), ("de la sortie", "du fond"), ("propre", "sale"), ("serrées", "amples"),
        ("serrée", "lâche"), ("retirée", "en place"), ("en place", "ôtées"), ("dans un support", "dans les doigts"),
        ("toutes les personnes présentes", "quelques personnes"), ("portent", "ôtent"), ("portez", "ôtez"),
        ("l'eau", "la sciure"), ("à couvercle", "ouvert"), ("métallique", "en plastique"), ("refroidir", "chauffer"),
        ("connue", "inconnue"), ("lisez", "oubliez"), ("videz", "remplissez"), ("videz-le", "remplissez-le"), ("vidé", "rempli"),
        ("vide", "plein"), ("froid", "chaud"), ("froids", "chauds"), ("arrêtez", "continuez"), ("arrêtez-la", "laissez-la"),
        ("maintenant", "plus tard"), ("arrêtées", "en marche"), ("sortez", "restez"), ("appelez", "n'appelez pas"),
        ("aérez", "fermez"), ("chaud", "froid"), ("avec soin", "avec force"), ("à deux", "en solo"), ("aspire", "ronfle"),
        ("attachés", "défaits"), ("débranchez", "branchez"), ("débranchées", "branchées"), ("demande", "interdit"),
        ("demandent", "interdisent"), ("quelqu'un", "personne"), ("prenez", "laissez"), ("bridée", "posée"),
        ("s'enflammer", "sécher"), ("chauffer", "se poser"), ("vives", "douces"), ("sous tension", "mortes"),
        ("demandez", "ne demandez rien"), ("solvant", "rien"), ("prêt", "loin"), ("feu", "calme"), ("regardez", "oubliez"),
        ("regardé", "oublié"), ("coupez", "remettez"), ("vérifié", "supposé"), ("allez-y", "n'y allez pas"), ("absente", "présente"),
        ("défense de", "libre de"), ("éloignez", "approchez"), ("protégés", "nus"), ("durcie", "mouillée"), ("lunettes", "rien"),
        ("à plat", "en boule"), ("protection auditive", "rien"),
        ("contre le sens", "dans le sens"), ("à portée de voix", "au loin"), ("mouillée plus longtemps", "sèche"), ("eau ou mousse", "essence"),
    ],
}  # fmt: skip


def all_messages() -> list[tuple[str, str, str]]:
    """(language, key, text) of every caution, start point, reminder, answer and note."""
    return [(one, key.removeprefix("care-"), text) for one in LANGUAGES for key, text in messages(one).items()]


def wrong(language: str, key: str, text: str) -> str:
    """What is wrong with a message; '' where it says what it must and nothing that turns it round."""
    rest = text.casefold()
    for phrase in PINNED[key][language]:
        if phrase.casefold() not in rest:
            return f"it does not say '{phrase}'"
        rest = rest.replace(phrase.casefold(), " … ", 1)
    turning = "|".join(TURNING[language].split())
    found = set(re.findall(rf"(?<![\w'])(?:{turning})(?![\w'])", rest))
    return f"it says '{min(found)}' outside of what is pinned" if found else ""


def turned(language: str, text: str) -> Iterator[str]:
    """The text with one word turned round, at each place where that can be done."""
    for said, other in TURNS[language]:
        for here, there in ((said, other), (other, said)):
            if here:
                for found in re.finditer(rf"(?<![\w'-]){re.escape(here)}(?![\w'-])", text, flags=re.IGNORECASE):
                    yield text[: found.start()] + there + text[found.end() :]


def test_every_message_is_pinned_in_every_language() -> None:
    for language in LANGUAGES:
        assert {key.removeprefix("care-") for key in messages(language)} == set(PINNED)
    assert all(set(one) == set(LANGUAGES) and all(one.values()) for one in PINNED.values())


@pytest.mark.parametrize(("language", "key", "text"), all_messages())
def test_a_message_says_what_it_must_and_nothing_that_turns_it_round(language: str, key: str, text: str) -> None:
    assert wrong(language, key, text) == ""


@pytest.mark.parametrize(("language", "key", "text"), all_messages())
def test_every_turn_of_a_word_is_noticed(language: str, key: str, text: str) -> None:
    turns = list(turned(language, text))

    assert turns, "no word of it can be turned round: add one to TURNS"
    assert [one for one in turns if wrong(language, key, one) == ""] == []


@pytest.mark.parametrize(
    ("language", "key", "said", "other"),
    [
        ("de", "rags", "einzeln ausgebreitet", "auf einem Haufen"),
        ("de", "rags", "Nie auf einen Haufen, nie in den Müll", "Auf einen Haufen, nie in den Müll"),
        ("de", "rags", "draußen im Schatten", "draußen im Schatten, notfalls auf einem Haufen"),
        ("de", "rags-end", "weg von Gebäuden", "weg von Gebäuden, später in den Müll"),
        ("en", "stay-and-watch", "Never leave it running", "Leave it running"),
        ("en", "never-leave", "Never leave", "Leave"),
        ("en", "watch-check", "Stay and watch.", "Stay and watch, or leave for a minute."),
        ("en", "rags", "Never in a pile", "In a pile"),
        ("es", "never-leave", "Nunca dejes", "Puedes dejar"),
        ("es", "rags", "en una sola capa", "en un montón"),
        ("fr", "stay-and-watch", "Ne la laissez jamais tourner seule", "Laissez-la tourner seule"),
        ("fr", "rags", "Jamais en tas", "En tas"),
        ("fr", "start-guards", "n'est neutralisé", "est neutralisé"),
    ],
)  # fmt: skip
def test_a_reversal_that_once_passed_is_noticed(language: str, key: str, said: str, other: str) -> None:
    text = messages(language)[f"care-{key}"]

    assert said in text
    assert wrong(language, key, text.replace(said, other))


@pytest.mark.parametrize("language", LANGUAGES)
def test_never_stands_in_the_same_messages_in_every_language(language: str) -> None:
    """Each language forbids leaving a machine in as many words as the others: 'never' stands in the same messages."""
    never = {"en": r"\bnever\b", "de": r"\bnie\b", "es": r"\bnunca\b", "fr": r"\bjamais\b"}
    forbidding = {key for key, text in messages(language).items() if re.search(never[language], text.casefold())}

    assert forbidding == {"care-stay-and-watch", "care-kickback", "care-rags", "care-start-small", "care-never-leave"}
