#include "output/report_words.h"

#include "output/more_words.h"
#include "output/value_words.h"
#include "output/words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace baywright::output {

namespace {

constexpr std::array table{
    // the page
    Phrase{"title", "{drive} for: {build}", "{drive} für: {build}"},
    Phrase{"skip", "Skip to the answer", "Direkt zum Ergebnis"},
    Phrase{"made", "Made on {date}", "Erstellt am {date}"},
    Phrase{"date", "{day} {month} {year}", "{day}. {month} {year}"},
    Phrase{"month 1", "January", "Januar"},
    Phrase{"month 2", "February", "Februar"},
    Phrase{"month 3", "March", "März"},
    Phrase{"month 4", "April", "April"},
    Phrase{"month 5", "May", "Mai"},
    Phrase{"month 6", "June", "Juni"},
    Phrase{"month 7", "July", "Juli"},
    Phrase{"month 8", "August", "August"},
    Phrase{"month 9", "September", "September"},
    Phrase{"month 10", "October", "Oktober"},
    Phrase{"month 11", "November", "November"},
    Phrase{"month 12", "December", "Dezember"},
    Phrase{"machine", "For your computer:", "Für Ihren Computer:"},
    Phrase{"pictures head", "Before and after", "Vorher und nachher"},
    Phrase{"picture head", "How it stands", "So sieht es aus"},
    Phrase{"model head", "To turn and look into", "Zum Drehen und Hineinsehen"},
    Phrase{"drives head", "The drives side by side", "Die Laufwerke im Vergleich"},
    Phrase{"asked head", "All that was asked about", "Alles, wonach gefragt war"},
    Phrase{"plan head", "What has to be changed", "Was geändert werden muss"},
    Phrase{"buy head", "What to buy for it", "Was dafür zu kaufen ist"},
    Phrase{"steps head", "How it is fitted", "So wird es eingebaut"},
    Phrase{"words head", "Words on this page", "Begriffe auf dieser Seite"},
    Phrase{"figures head", "For the curious: figures and their sources",
           "Für alle, die es genau wissen wollen: Zahlen und Quellen"},
    Phrase{"figures english", "The figures below are in English.", "Die folgenden Einzelheiten sind auf Englisch."},
    Phrase{"figures printed", "Figures and their sources are on this page where it is read on a screen.",
           "Zahlen und Quellen stehen auf dieser Seite, wenn sie am Bildschirm gelesen wird."},
    Phrase{"limits head", "What this page does not know", "Was diese Seite nicht weiß"},
    Phrase{
        "limits",
        "All of this is worked out from the lengths and sheets that were given, and no better than they are. "
        "Temperatures are intervals by published laws, held against no measured card; speeds are the makers' own "
        "figures, or what the connection lets through where that is less, and less in practice. Prices are those of "
        "the list. Where a maker's manual says otherwise, the manual counts.",
        "Alles hier ist aus den angegebenen Maßen und Datenblättern berechnet und nicht genauer als diese. "
        "Temperaturen sind Bereiche nach veröffentlichten Gesetzen, an keiner Karte nachgemessen; Geschwindigkeiten "
        "sind die Angaben der Hersteller oder, wo das weniger ist, was die Verbindung durchlässt, in der Praxis ist es "
        "weniger. Preise stammen aus der Liste. Sagt die Anleitung des Herstellers etwas anderes, gilt die Anleitung."},
    Phrase{"caution head", "Before anybody opens it", "Bevor jemand das Gerät öffnet"},
    Phrase{"caution", "Caution:", "Achtung:"},
    Phrase{"caution fit",
           "Power off, pull the plug, disconnect the battery, touch bare metal first. Never open a power supply. Local "
           "rules and licensed practice come first.",
           "Ausschalten, Netzstecker ziehen, Akku abklemmen, zuerst blankes Metall berühren. Niemals ein Netzteil "
           "öffnen. Örtliche Vorschriften und Fachbetriebe gehen vor."},
    Phrase{
        "caution drill",
        "Before drilling: boards and drives out of the case, eye protection on; deburr, and leave no chips behind.",
        "Vor dem Bohren: Platinen und Laufwerke aus dem Gehäuse nehmen, Schutzbrille aufsetzen; danach entgraten und "
        "keine Späne zurücklassen."},
    Phrase{"caution file",
           "Before filing or cutting: boards and drives out of the case, eye protection on, keep off copper; leave no "
           "dust.",
           "Vor dem Feilen oder Schneiden: Platinen und Laufwerke aus dem Gehäuse nehmen, Schutzbrille aufsetzen, von "
           "Kupfer fernbleiben; keinen Staub zurücklassen."},

    // verdicts
    Phrase{"fits", "fits", "passt"},
    Phrase{"marginal", "may not fit", "passt vielleicht nicht"},
    Phrase{"does not fit", "does not fit", "passt nicht"},
    Phrase{"undecided", "not settled", "nicht geklärt"},
    Phrase{"fits not yet", "does not fit as it is", "passt so nicht"},
    Phrase{"fits changed", "fits with a change", "passt mit einer Änderung"},
    Phrase{"may fit changed", "may fit with a change", "passt vielleicht mit einer Änderung"},
    Phrase{"fits elsewhere", "fits at another place", "passt an einem anderen Platz"},
    Phrase{"not tried", "not checked", "nicht geprüft"},

    // the answer
    Phrase{"take", "Take {drive}: it fits {place}{ground}.", "Nehmen Sie {drive}: Es passt in {place}{ground}."},
    Phrase{"take unchecked", "Take {drive}{ground}. Whether it fits was not asked.",
           "Nehmen Sie {drive}{ground}. Ob es passt, war nicht gefragt."},
    Phrase{"and", ", and {ground}", ", und {ground}"},
    Phrase{"because", ": {ground}", ": {ground}"},
    Phrase{"of the list", "of those in the list, {ground}", "von denen der Liste {ground}"},
    Phrase{"of the list made for", "of those that are made for {daily} GB of writing a day, {ground}",
           "von denen, die für {daily} GB Schreiben am Tag gemacht sind, {ground}"},
    Phrase{"of those that fit", "of those that fit, {ground}", "von denen, die passen, {ground}"},
    Phrase{"of those made for", "of those that fit and are made for {daily} GB of writing a day, {ground}",
           "von denen, die passen und für {daily} GB Schreiben am Tag gemacht sind, {ground}"},
    Phrase{"ground price", "it costs the least ({figure})", "kostet es am wenigsten ({figure})"},
    Phrase{"ground gigabyte", "it gives you the most storage for the money ({figure} per gigabyte)",
           "bekommen Sie hier am meisten Platz fürs Geld ({figure} pro Gigabyte)"},
    Phrase{"ground per tbw", "it costs the least for what may be written to it ({figure} per terabyte written)",
           "kostet es am wenigsten für das, was darauf geschrieben werden darf ({figure} pro geschriebenem Terabyte)"},
    Phrase{"ground capacity", "it holds the most ({figure})", "fasst es am meisten ({figure})"},
    Phrase{"ground read", "it reads the fastest here ({figure})", "liest es hier am schnellsten ({figure})"},
    Phrase{"ground write", "it writes the fastest here ({figure})", "schreibt es hier am schnellsten ({figure})"},
    Phrase{"ground alike", "none reads or writes faster here ({figure})",
           "liest und schreibt hier keines schneller ({figure})"},
    Phrase{"ground tbw", "the most may be written to it ({figure})",
           "darf darauf am meisten geschrieben werden ({figure})"},
    Phrase{"ground dwpd", "the most may be written to it a day ({figure} times its capacity)",
           "darf darauf am Tag am meisten geschrieben werden ({figure}-mal seine Kapazität)"},
    Phrase{"ground years", "what may be written to it lasts the longest",
           "reicht bei ihm am längsten, was geschrieben werden darf"},
    Phrase{"ground warranty", "it has the longest warranty (it ends after {figure})",
           "hat es die längste Garantie (sie endet nach {figure})"},
    Phrase{"ground score", "it does best by your own weighting ({figure} of 1)",
           "schneidet es nach Ihrer Gewichtung am besten ab ({figure} von 1)"},
    Phrase{"fastest absent", "The fastest, {drive}, would be money wasted: {why}.",
           "Das schnellste, {drive}, wäre hinausgeworfenes Geld: {why}."},
    Phrase{"fastest fits not", "The fastest, {drive}, does not fit: {why}.",
           "Das schnellste, {drive}, passt nicht: {why}."},
    Phrase{"fastest unsure", "Whether the fastest, {drive}, fits is not sure: {why}.",
           "Ob das schnellste, {drive}, passt, ist nicht sicher: {why}."},
    Phrase{"fastest alike",
           "The fastest on paper, {drive}, would be wasted: this computer lets no more than {figure} MB/s through, and "
           "{count} of these drives reach that.",
           "Das auf dem Papier schnellste, {drive}, wäre hier verschenkt: Mehr als {figure} MB/s lässt dieser Computer "
           "nicht durch, und das erreichen {count} dieser Laufwerke."},
    Phrase{"fastest slower",
           "The fastest on paper, {drive}, loses {share} of its speed here: this computer lets no more than {figure} "
           "MB/s through.",
           "Das auf dem Papier schnellste, {drive}, verliert hier {share} seines Tempos: Mehr als {figure} MB/s lässt "
           "dieser Computer nicht durch."},
    Phrase{"fastest dearer",
           "The fastest, {drive}, would read at {figure} instead of {own} MB/s, but a gigabyte of it costs {price} "
           "instead of {own price}.",
           "Das schnellste, {drive}, läse mit {figure} statt {own} MB/s, aber ein Gigabyte davon kostet {price} statt "
           "{own price}."},
    Phrase{"fastest is it", "It is also the fastest of the list.", "Es ist auch das schnellste der Liste."},
    Phrase{"passed over", "Passed over, though first otherwise:", "Übergangen, obwohl sonst vorn:"},
    Phrase{"passed soon", "{drive} (at {daily} GB a day what may be written to it is used up after {figure})",
           "{drive} (bei {daily} GB am Tag ist nach {figure} verbraucht, was geschrieben werden darf)"},
    Phrase{"passed unknown", "{drive} (how much may be written to it is not stated)",
           "{drive} (wie viel darauf geschrieben werden darf, ist nicht angegeben)"},
    Phrase{"none lasts", "No drive that fits is known to be made for {daily} GB of writing a day.",
           "Von keinem Laufwerk, das passt, ist bekannt, dass es für {daily} GB Schreiben am Tag gemacht ist."},
    Phrase{"none goes", "None of the {count} drives can be taken as things are.",
           "Keines der {count} Laufwerke kann so, wie es ist, genommen werden."},
    Phrase{"neither goes", "Neither of the 2 drives can be taken as things are.",
           "Keines der beiden Laufwerke kann so, wie es ist, genommen werden."},
    Phrase{"neither sure", "Neither of the 2 drives is sure to fit as things are.",
           "Von keinem der beiden Laufwerke ist sicher, dass es so, wie es ist, passt."},
    Phrase{"one goes not", "{drive} cannot be taken as things are.",
           "{drive} kann so, wie es ist, nicht genommen werden."},
    Phrase{"none sure", "None of the {count} drives is sure to fit as things are.",
           "Von keinem der {count} Laufwerke ist sicher, dass es so, wie es ist, passt."},
    Phrase{"nearest", "The first of them, {drive}: {why}.", "Das erste davon, {drive}: {why}."},
    Phrase{"nearest changed", "Nearest to it is {drive}: {why}.", "Am nächsten daran ist {drive}: {why}."},
    Phrase{"it fits", "{drive} fits {place}.", "{drive} passt in {place}."},
    Phrase{"it fits gap",
           "{drive} fits {place}: where it has the least to spare{aside}, between {a} and {b}, {gap} of air is left.",
           "{drive} passt in {place}: Wo am wenigsten Reserve ist{aside}, zwischen {a} und {b}, bleiben {gap} Luft."},
    Phrase{"at worst", "{gap} (at worst {least})", "{gap} (ungünstigstenfalls {least})"},
    Phrase{"own aside", " (its own connector and screws aside)", " (Anschluss und Schrauben nicht mitgezählt)"},
    Phrase{"nothing to change", "Nothing has to be changed for it.", "Dafür muss nichts geändert werden."},
    Phrase{"slower link", "It runs slower there than it could: at {share} of what its own connection could carry.",
           "Es läuft dort langsamer, als es könnte: mit {share} dessen, was sein eigener Anschluss durchließe."},
    Phrase{"fits not", "{drive} does not fit {place}: {why}.", "{drive} passt nicht in {place}: {why}."},
    Phrase{"fits not now", "As it is, {drive} does not fit {place}: {why}.",
           "So, wie es ist, passt {drive} nicht in {place}: {why}."},
    Phrase{"may not fit", "Whether {drive} fits {place} is not sure: {why}.",
           "Ob {drive} in {place} passt, ist nicht sicher: {why}."},
    Phrase{"not settled", "Whether {drive} fits {place} could not be settled: {why}.",
           "Ob {drive} in {place} passt, ließ sich nicht klären: {why}."},
    Phrase{"with plan", "It fits with this change: {plan}.", "Mit dieser Änderung passt es: {plan}."},
    Phrase{"may with plan", "It may fit with this change: {plan}. {caution}",
           "Mit dieser Änderung passt es vielleicht: {plan}. {caution}"},
    Phrase{"fits there", "It fits {place} as things are.", "So, wie es ist, passt es in {place}."},
    Phrase{"no plan", "No change that was tried makes it fit.", "Keine Änderung, die versucht wurde, hilft."},
    Phrase{"measure first", "Measure before you buy.", "Bitte vor dem Kauf nachmessen."},
    Phrase{"fact price", "Price", "Preis"},
    Phrase{"fact capacity", "Storage", "Speicherplatz"},
    Phrase{"fact capacity note", "some computers show it as {figure}", "manche Computer zeigen das als {figure} an"},
    Phrase{"fact read", "Reads here at most", "Liest hier höchstens mit"},
    Phrase{"fact read free", "Reads at most", "Liest höchstens mit"},
    Phrase{"fact warranty", "Warranty ends after", "Garantie endet nach"},
    Phrase{"fact warranty note", "by time, or by what is written", "nach Zeit oder nach Geschriebenem"},
    Phrase{"fact warranty by time", "by time; how much may be written is not stated",
           "nach Zeit; wie viel geschrieben werden darf, ist nicht angegeben"},
    Phrase{"fact warranty by writing", "reckoned by what is written; no time is stated",
           "gerechnet nach Geschriebenem; eine Zeit ist nicht angegeben"},
    Phrase{"fact daily", "Reckoned with {daily} GB written a day", "Gerechnet mit {daily} GB Schreiben am Tag"},

    // why not
    Phrase{
        "why absent", "this computer's slot speaks {wired} only; the drive, which speaks {own}, would not be found",
        "Der Steckplatz dieses Computers spricht nur {wired}; das Laufwerk, das {own} spricht, würde nicht gefunden"},
    Phrase{"why split", "the computer does not split this slot so far; the drive would stay unseen",
           "Der Computer teilt diesen Steckplatz nicht so weit auf; das Laufwerk bliebe unsichtbar"},
    Phrase{"why form", "it is another kind of drive ({drive}) than this place takes ({place})",
           "Es ist eine andere Bauform ({drive}), als dieser Platz aufnimmt ({place})"},
    Phrase{"why adapter", "it goes in only with an adapter ({adapter})",
           "Es geht nur mit einem Adapter hinein ({adapter})"},
    Phrase{"why adapter passes not", "the adapter does not pass on what the drive speaks",
           "Der Adapter gibt nicht weiter, was das Laufwerk spricht"},
    Phrase{"why long", "the card ({size}) is longer than the slot holds ({offered})",
           "Die Karte ({size}) ist länger, als der Steckplatz aufnimmt ({offered})"},
    Phrase{"why short",
           "the card ({size}) is shorter than the slot holds ({offered}): its screw would have nothing to hold on to",
           "Die Karte ({size}) ist kürzer, als der Steckplatz aufnimmt ({offered}): Ihre Schraube fände keinen Halt"},
    Phrase{"why size", "the slot does not hold a card of this size",
           "Der Steckplatz nimmt keine Karte dieser Größe auf"},
    Phrase{"why key", "the notch of its edge does not match this slot",
           "Die Kerbe ihrer Kante passt nicht zu diesem Steckplatz"},
    Phrase{"why plug", "its connector does not match the one there", "Sein Anschluss passt nicht zu dem, der dort ist"},
    Phrase{"why soldered", "it is soldered to its board and cannot be moved",
           "Es ist auf seine Platine gelötet und lässt sich nicht versetzen"},
    Phrase{"why class", "the chips on its underside have no room in this slot",
           "Die Chips auf seiner Unterseite haben in diesem Steckplatz keinen Platz"},
    Phrase{"why overlap", "{a} and {b} would need the same room; {gap} are missing",
           "{a} und {b} bräuchten denselben Raum; es fehlen {gap}"},
    Phrase{"why near", "between {a} and {b} only {gap} would be left, and {asked} are asked for",
           "Zwischen {a} und {b} blieben nur {gap}, verlangt sind {asked}"},
    Phrase{"why marginal", "{a} and {b} may touch, depending on how exactly the parts are made",
           "{a} und {b} können sich berühren, je nachdem, wie genau die Teile gefertigt sind"},
    Phrase{"why marginal near",
           "between {a} and {b} it may come to as little as {gap} of air, and {asked} were asked for",
           "Zwischen {a} und {b} bleiben ungünstigstenfalls nur {gap} Luft, verlangt waren {asked}"},
    Phrase{"why both", "{first}; and {second}", "{first}; außerdem: {second}"},
    Phrase{"why occupied", "the place is taken by {by}", "Der Platz ist belegt: {by}"},
    Phrase{"why holes", "its screw holes are not where the place has its own",
           "Seine Schraubenlöcher sitzen nicht dort, wo der Platz seine hat"},
    Phrase{"why thread", "the screws have another thread than the drive",
           "Die Schrauben haben ein anderes Gewinde als das Laufwerk"},
    Phrase{"why screw long", "the screws would go in farther than the drive allows and may damage it",
           "Die Schrauben gingen tiefer hinein, als das Laufwerk erlaubt, und könnten es beschädigen"},
    Phrase{"why screw short", "the screws are too short to hold", "Die Schrauben sind zu kurz, um zu halten"},
    Phrase{"why screw", "its screws are not right", "Seine Schrauben stimmen nicht"},
    Phrase{"why connector", "its connector does not stand where the machine's is",
           "Sein Anschluss sitzt nicht dort, wo der des Geräts ist"},
    Phrase{"why bracket", "its bracket does not match the machine's rail",
           "Sein Slotblech passt nicht zur Halterung des Geräts"},
    Phrase{"why way", "it cannot be brought to its place: {by} is in the way",
           "Es lässt sich nicht an seinen Platz bringen: {by} ist im Weg"},
    Phrase{"why way plain", "whether it can be brought to its place is not sure",
           "Ob es sich an seinen Platz bringen lässt, ist nicht sicher"},
    Phrase{"why driver", "no screwdriver reaches its screws", "Kein Schraubendreher erreicht seine Schrauben"},
    Phrase{"why height", "its height is not known", "Seine Höhe ist nicht bekannt"},
    Phrase{"why other", "see the figures below", "Siehe die Zahlen weiter unten"},

    // forms of drives, by what they are called elsewhere
    Phrase{"form M.2 card", "M.2 card", "M.2-Karte"},
    Phrase{"form mini card", "mini card", "Mini-Karte"},
    Phrase{"form 2.5-inch drive", "2.5-inch drive", "2,5-Zoll-Laufwerk"},
    Phrase{"form 3.5-inch drive", "3.5-inch drive", "3,5-Zoll-Laufwerk"},
    Phrase{"form 5.25-inch device", "5.25-inch device", "5,25-Zoll-Gerät"},
    Phrase{"form E1.S drive", "E1.S drive", "E1.S-Laufwerk"},
    Phrase{"form E1.L drive", "E1.L drive", "E1.L-Laufwerk"},
    Phrase{"form E3.S drive", "E3.S drive", "E3.S-Laufwerk"},
    Phrase{"form E3.L drive", "E3.L drive", "E3.L-Laufwerk"},
    Phrase{"form add-in card", "add-in card", "Steckkarte"},
    Phrase{"form soldered chip", "soldered chip", "eingelöteter Chip"},

    // pictures
    Phrase{"picture empty", "The place before: {place}, with nothing in it.", "Vorher: {place}, noch leer."},
    Phrase{"picture occupied", "The place before: {place}, with what is there now.",
           "Vorher: {place}, mit dem, was jetzt dort ist."},
    Phrase{"picture misfit", "As it is: {drive} at {place}.", "So, wie es ist: {drive} an {place}."},
    Phrase{"picture place only", "The place, {place}, without {drive}, which cannot be put there: {why}.",
           "Der Platz, {place}, ohne {drive}; es lässt sich dort nicht einsetzen: {why}."},
    Phrase{"picture seated", "After: {drive} in {place}.", "Nachher: {drive} in {place}."},
    Phrase{"picture seated gap", "After: {drive} in {place}. Where it has the least to spare, {gap} of air is left.",
           "Nachher: {drive} in {place}. Wo am wenigsten Reserve ist, bleiben {gap} Luft."},
    Phrase{"picture changed", "With the change: {drive} in {place}.", "Mit der Änderung: {drive} in {place}."},
    Phrase{"picture changed gap",
           "With the change: {drive} in {place}. Where it has the least to spare, {gap} of air is left.",
           "Mit der Änderung: {drive} in {place}. Wo am wenigsten Reserve ist, bleiben {gap} Luft."},
    Phrase{"gap clear", "{gap} clear", "{gap} frei"},
    Phrase{"gap over", "{gap} too much", "{gap} zu viel"},
    Phrase{"gap between", "{a}, {b}", "{a}, {b}"},
    Phrase{"drawings",
           "This computer could not render pictures (OpenGL was not there), so the drawings stand here, in English.",
           "Auf diesem Computer ließen sich keine Bilder berechnen (OpenGL fehlte), darum stehen hier die Zeichnungen, "
           "auf Englisch."},

    // the model
    Phrase{
        "model says",
        "{drive} at {place}, in three dimensions. Drag it or press the arrow keys to turn it, plus and minus to zoom.",
        "{drive} an {place}, dreidimensional. Zum Drehen ziehen oder die Pfeiltasten drücken, mit Plus und Minus "
        "vergrößern und verkleinern."},
    Phrase{"model caption", "Drag to turn; the arrow keys turn it too.",
           "Zum Drehen ziehen; auch die Pfeiltasten drehen es."},
    Phrase{"model controls", "What the model shows", "Was das Modell zeigt"},
    Phrase{"model turn", "Turn", "Drehen"},
    Phrase{"model zoom", "Zoom", "Zoom"},
    Phrase{"model turn left", "Turn left", "Nach links drehen"},
    Phrase{"model turn right", "Turn right", "Nach rechts drehen"},
    Phrase{"model turn up", "Turn up", "Nach oben drehen"},
    Phrase{"model turn down", "Turn down", "Nach unten drehen"},
    Phrase{"model nearer", "Nearer", "Näher"},
    Phrase{"model farther", "Farther", "Weiter weg"},
    Phrase{"model reset", "As at first", "Wie am Anfang"},
    Phrase{"model cut", "Cut away", "Aufschneiden"},
    Phrase{"model direction", "From which side", "Von welcher Seite"},
    Phrase{"model across", "from the side", "von der Seite"},
    Phrase{"model along", "from the end", "von vorn"},
    Phrase{"model level", "from above", "von oben"},
    Phrase{"model why", "Cut at the tight spot", "An der engsten Stelle aufschneiden"},
    Phrase{"model apart", "Take apart", "Auseinandernehmen"},
    Phrase{"model put in", "Put in", "Einsetzen"},
    Phrase{"model play", "Play", "Abspielen"},
    Phrase{"model stop", "Stop", "Anhalten"},

    // plot and table
    Phrase{"plot title capacity", "Price against storage", "Preis und Speicherplatz"},
    Phrase{"plot title read", "Price against speed", "Preis und Tempo"},
    Phrase{"plot desc capacity",
           "Each drive as a point: farther right holds more, farther down costs less. The table below has the figures.",
           "Jedes Laufwerk als Punkt: weiter rechts ist mehr Speicherplatz, weiter unten kostet es weniger. Die Zahlen "
           "stehen in der Tabelle darunter."},
    Phrase{
        "plot desc read",
        "Each drive as a point: farther right reads faster here, farther down costs less. The table below has the "
        "figures.",
        "Jedes Laufwerk als Punkt: weiter rechts liest es hier schneller, weiter unten kostet es weniger. Die Zahlen "
        "stehen in der Tabelle darunter."},
    Phrase{"plot x capacity", "storage", "Speicherplatz"},
    Phrase{"plot x read", "reading here, MB/s", "Lesen hier, MB/s"},
    Phrase{"plot y", "price", "Preis"},
    Phrase{"plot some", "Not every drive has its name here for lack of room; the table has them all.",
           "Aus Platzgründen steht nicht bei jedem Punkt ein Name; die Tabelle hat alle."},
    Phrase{"plot missing", "Not in the picture, since a figure is missing: {names}.",
           "Nicht im Bild, weil eine Angabe fehlt: {names}."},
    Phrase{"plot taken", "our advice", "unser Rat"},
    Phrase{"key goes", "fits", "passt"},
    Phrase{"key may go", "may not fit", "passt vielleicht nicht"},
    Phrase{"key not known", "not checked or not settled", "nicht geprüft oder nicht geklärt"},
    Phrase{"key goes not", "does not fit", "passt nicht"},
    Phrase{"table caption", "The drives in ranked order", "Die Laufwerke in ihrer Rangfolge"},
    Phrase{"table sorted", "Sorted by {column}, {way}.", "Sortiert nach {column}, {way}."},
    Phrase{"table rising", "rising", "aufsteigend"},
    Phrase{"table falling", "falling", "absteigend"},
    Phrase{"table sort", "Sort by:", "Sortieren nach:"},
    Phrase{"col drive", "Drive", "Laufwerk"},
    Phrase{"col fit", "Fits?", "Passt es?"},
    Phrase{"col price", "Price", "Preis"},
    Phrase{"col price in", "Price, {currency}", "Preis, {currency}"},
    Phrase{"col gigabyte", "A gigabyte", "Pro Gigabyte"},
    Phrase{"col capacity", "Storage", "Speicher\u00ADplatz"},
    Phrase{"col read", "Reads here, MB/s", "Liest hier, MB/s"},
    Phrase{"col read free", "Reads, MB/s", "Liest, MB/s"},
    Phrase{"col tbw", "Writing allowed (TBW)", "Schreib\u00ADmenge (TBW)"},
    Phrase{"col warranty", "Warranty ends after", "Garantie endet nach"},
    Phrase{"col place", "Place", "Platz"},
    Phrase{"col notes", "What to know", "Gut zu wissen"},
    Phrase{"unknown", "not stated", "keine Angabe"},
    Phrase{"not found there", "not found there", "wird dort nicht gefunden"},
    Phrase{"none here", "not found there", "wird nicht gefunden"},
    Phrase{"held", "held by the slot", "vom Steckplatz begrenzt"},
    Phrase{"table unused", "Not understood in the list and passed over: {columns}.",
           "In der Liste nicht verstanden und übergangen: {columns}."},
    Phrase{"advice", "our advice", "unser Rat"},
    Phrase{"table note",
           "What is not stated is not known, and never counts as nothing. Speeds are the makers' own figures, or what "
           "the connection lets through where that is less; in practice it is less.",
           "Was nicht angegeben ist, ist nicht bekannt und zählt nie als null. Geschwindigkeiten sind die Angaben der "
           "Hersteller oder, wo das weniger ist, was die Verbindung durchlässt; in der Praxis ist es weniger."},
    Phrase{"asked note",
           "Each drive at the place that suits it best. This page is about the one that most needs looking at.",
           "Jedes Laufwerk an dem Platz, der ihm am besten passt. Diese Seite zeigt das, das man sich am ehesten "
           "ansehen muss."},

    // remarks
    Phrase{"cache module", "A cache for another drive, not a drive of its own.",
           "Ein Zwischenspeicher für ein anderes Laufwerk, selbst kein Laufwerk."},
    Phrase{"small for a drive",
           "With {figure} it is as small as the cache modules that are sold beside drives: ask whether it is one.",
           "Mit {figure} ist es so klein wie die Zwischenspeicher, die neben Laufwerken verkauft werden: bitte "
           "nachfragen, ob es einer ist."},
    Phrase{"soldered", "It is soldered to a board and cannot be swapped.",
           "Es ist auf eine Platine gelötet und lässt sich nicht tauschen."},
    Phrase{"no price", "No price is given.", "Es ist kein Preis angegeben."},
    Phrase{"no capacity", "How much it holds is not given.", "Wie viel es fasst, ist nicht angegeben."},
    Phrase{"no TBW", "How much may be written to it (TBW) is not stated.",
           "Wie viel darauf geschrieben werden darf (TBW), ist nicht angegeben."},
    Phrase{"TBW ends first",
           "What may be written to it is used up after {years}, and the warranty of {warranty} ends then.",
           "Was darauf geschrieben werden darf, ist nach {years} verbraucht; die Garantie von {warranty} endet dann "
           "schon."},
    Phrase{"TBW ends", "What may be written to it is used up after {years}; how long its warranty is, is not stated.",
           "Was darauf geschrieben werden darf, ist nach {years} verbraucht; wie lang die Garantie ist, ist nicht "
           "angegeben."},
    Phrase{"writes beyond", "You write more a day than it is made for ({figure} times its capacity, DWPD).",
           "Sie schreiben am Tag mehr, als wofür es gemacht ist ({figure}-mal seine Kapazität, DWPD)."},
    Phrase{"DRAM unknown", "Whether it has memory of its own to work with (DRAM) is not stated.",
           "Ob es eigenen Arbeitsspeicher hat (DRAM), ist nicht angegeben."},
    Phrase{"HMB",
           "It has no memory of its own to work with (DRAM) and borrows some from the computer (HMB): many small "
           "writes are slower.",
           "Es hat keinen eigenen Arbeitsspeicher (DRAM) und leiht sich welchen vom Computer (HMB): Viele kleine "
           "Schreibvorgänge sind langsamer."},
    Phrase{
        "no DRAM",
        "It has no memory of its own to work with (DRAM): many small writes are slower, and its stated speeds hold for "
        "a while only.",
        "Es hat keinen eigenen Arbeitsspeicher (DRAM): Viele kleine Schreibvorgänge sind langsamer, und das angegebene "
        "Tempo hält es nur eine Weile."},
    Phrase{
        "dense cells",
        "It packs {bits} bits into each cell ({cells}). At {day} GB a day, {share} of its capacity, it will often "
        "write past its fast buffer, where such drives do 50 to 200 MB/s (common practice, no source).",
        "Es packt {bits} Bits in jede Zelle ({cells}). Bei {day} GB am Tag, {share} seiner Kapazität, schreibt es oft "
        "über seinen schnellen Puffer hinaus, und dann schaffen solche Laufwerke 50 bis 200 MB/s (übliche Erfahrung, "
        "ohne Quelle)."},
    Phrase{"bus not carried", "It would not be found here: this computer's slot speaks {slot} only, the drive {own}.",
           "Es würde hier nicht gefunden: Der Steckplatz dieses Computers spricht nur {slot}, das Laufwerk {own}."},
    Phrase{"slower here", "It is held back here: the slot lets {figure} MB/s through, {share} less than it could do.",
           "Hier wird es gebremst: Der Steckplatz lässt {figure} MB/s durch, {share} weniger, als es könnte."},
    Phrase{"costs more a GB", "A gigabyte costs {here} here and {there} in {other}.",
           "Ein Gigabyte kostet hier {here}, bei {other} {there}."},
    Phrase{"larger dearer",
           "{other}, the same with {figure} more, costs {more} more; the larger ones of a series usually write faster "
           "and longer (common practice, no source).",
           "{other}, das gleiche mit {figure} mehr, kostet {more} mehr; die größeren einer Reihe schreiben meist "
           "schneller und länger (übliche Erfahrung, ohne Quelle)."},
    Phrase{"larger no dearer", "{other}, the same with {figure} more, does not cost more.",
           "{other}, das gleiche mit {figure} mehr, kostet nicht mehr."},
    Phrase{"larger", "There is also {other}, the same with {figure} more.",
           "Es gibt auch {other}, das gleiche mit {figure} mehr."},
    Phrase{"now hdd", "hard disk", "Festplatte"},
    Phrase{"now emmc", "soldered memory (eMMC)", "eingelöteter Speicher (eMMC)"},
    Phrase{"now sata", "SATA drive", "SATA-Laufwerk"},
    Phrase{"now nvme3", "NVMe drive, PCIe 3", "NVMe-Laufwerk, PCIe 3"},
    Phrase{"now nvme4", "NVMe drive, PCIe 4", "NVMe-Laufwerk, PCIe 4"},
    Phrase{"now nvme5", "NVMe drive, PCIe 5", "NVMe-Laufwerk, PCIe 5"},
    Phrase{"up plainly",
           "Against what is there now ({now}): nothing has to move inside it any more, which is felt in everything.",
           "Gegenüber jetzt ({now}): Innen muss sich nichts mehr bewegen, das ist bei allem zu spüren."},
    Phrase{"up plainly ratio",
           "Against what is there now ({now}): nothing has to move inside it any more, which is felt in everything; "
           "reads large files about {ratio} times as fast.",
           "Gegenüber jetzt ({now}): Innen muss sich nichts mehr bewegen, das ist bei allem zu spüren; liest große "
           "Dateien etwa {ratio}-mal so schnell."},
    Phrase{"up faster",
           "Against what is there now ({now}): reads large files about {ratio} times as fast, small ones gain less.",
           "Gegenüber jetzt ({now}): liest große Dateien etwa {ratio}-mal so schnell, bei kleinen ist es weniger."},
    Phrase{"up little", "Against what is there now ({now}): reads at most {ratio} times as fast, which few notice.",
           "Gegenüber jetzt ({now}): liest höchstens {ratio}-mal so schnell, das merken nur wenige."},
    Phrase{"up none", "Against what is there now ({now}): reads no faster; only storage is gained.",
           "Gegenüber jetzt ({now}): liest nicht schneller; nur mehr Platz ist gewonnen."},
    Phrase{"dense other", "Without that limit: {other} ({cells}), which costs {more} more.",
           "Ohne diese Grenze: {other} ({cells}), das {more} mehr kostet."},
    Phrase{"dense other no dearer", "Without that limit: {other} ({cells}), which does not cost more.",
           "Ohne diese Grenze: {other} ({cells}), das nicht mehr kostet."},
    Phrase{"dense other unpriced", "Without that limit: {other} ({cells}).", "Ohne diese Grenze: {other} ({cells})."},
    Phrase{"dense of", "{drive}: {remark}", "{drive}: {remark}"},

    // heat
    Phrase{"heat below", "Writing on and on it stays below the {limit} °C at which it warns (reckoned, not measured).",
           "Bei langem Schreiben bleibt es unter den {limit} °C, bei denen es warnt (berechnet, nicht gemessen)."},
    Phrase{"heat may",
           "Writing on and on it may slow down to protect itself: it warns at {limit} °C (reckoned, not measured).",
           "Bei langem Schreiben wird es womöglich langsamer, um sich zu schützen: Bei {limit} °C warnt es (berechnet, "
           "nicht gemessen)."},
    Phrase{"heat likely",
           "Writing on and on it will likely slow down to protect itself: it warns at {limit} °C (reckoned, not "
           "measured).",
           "Bei langem Schreiben wird es wahrscheinlich langsamer, um sich zu schützen: Bei {limit} °C warnt es "
           "(berechnet, nicht gemessen)."},
    Phrase{"heat no limit",
           "Writing on and on it becomes {range} warm (reckoned, not measured); how warm it may become is not stated.",
           "Bei langem Schreiben wird es {range} warm (berechnet, nicht gemessen); wie warm es werden darf, ist nicht "
           "angegeben."},
    Phrase{"heat no power", "How warm it becomes is not known: how much power it takes is not stated.",
           "Wie warm es wird, ist nicht bekannt: Sein Leistungsbedarf ist nicht angegeben."},
    Phrase{"heat too hot", "At the power it takes ({watts} W) it could not give off its heat here.",
           "Mit seinem Leistungsbedarf ({watts} W) könnte es seine Wärme hier nicht abgeben."},
    Phrase{"heat over", "It takes {known} W, and the slot gives {watts} W.",
           "Es braucht {known} W, der Steckplatz gibt {watts} W."},
    Phrase{"heat pad loose", "The pad under its heatsink may not touch everywhere.",
           "Das Wärmeleitpad unter seinem Kühlkörper liegt womöglich nicht überall an."},
    Phrase{"heat pad tight", "The pad under its heatsink may be pressed so hard that the card bends.",
           "Das Wärmeleitpad unter seinem Kühlkörper wird womöglich so stark gepresst, dass sich die Karte biegt."},
    Phrase{"range", "{low} to {high} °C", "{low} bis {high} °C"},
    Phrase{"range open", "{low} °C and more", "{low} °C und mehr"},

    // plans
    Phrase{"plan result", "Then {gap} of air is left where it has the least to spare{aside}, between {a} and {b}.",
           "Dann bleiben, wo am wenigsten Reserve ist{aside}, zwischen {a} und {b}, {gap} Luft."},
    Phrase{"plan price", "What it costs besides money: {prices}.", "Was es außer Geld kostet: {prices}."},
    Phrase{"plan see", "To see to:", "Zu beachten:"},
    Phrase{"plan checked",
           "The change was made in the description of the computer and everything was checked again: place, way in, "
           "tools, neighbours.",
           "Die Änderung wurde in der Beschreibung des Computers gemacht und alles neu geprüft: Platz, Weg hinein, "
           "Werkzeug, Nachbarn."},
    Phrase{"other heatsink", "heatsink {to} ({value} high) in place of {what} ({from})",
           "Kühlkörper {to} ({value} hoch) statt {what} ({from})"},
    Phrase{"lower heatsink", "a heatsink at most {value} high in place of {what} ({from})",
           "ein höchstens {value} hoher Kühlkörper statt {what} ({from})"},
    Phrase{"no heatsink", "no heatsink: {what} ({from}) left off, with its pad",
           "ohne Kühlkörper: {what} ({from}) samt Wärmeleitpad weglassen"},
    Phrase{"same pad", "{what} ({from}) pressed by {share}", "{what} ({from}) um {share} zusammengedrückt"},
    Phrase{"other pad", "a heat-conducting pad of {value}, pressed by {share}, in place of {what} ({from})",
           "ein Wärmeleitpad von {value}, um {share} zusammengedrückt, statt {what} ({from})"},
    Phrase{"single-sided", "a card with chips on one side only ({to}) in place of {what}",
           "eine Karte mit Chips nur auf einer Seite ({to}) statt {what}"},
    Phrase{"stand-off hole", "a stand-off at the {to} hole of {what}", "ein Abstandhalter am {to}er Loch von {what}"},
    Phrase{"stand-off height", "a stand-off {value} high in {what}, not {from}",
           "ein {value} hoher Abstandhalter in {what}, nicht {from}"},
    Phrase{"spacers under drive", "spacers of {value} under {what}", "Abstandhülsen von {value} unter {what}"},
    Phrase{"with screws", "{change}, with screws {screw} long", "{change}, mit {screw} langen Schrauben"},
    Phrase{"spacers at screws",
           "spacers of {length}{instead} at each screw of {what}, which is then {value} away, not {from}",
           "Abstandhülsen von {length}{instead} an jeder Schraube von {what}, das dann {value} entfernt ist, nicht "
           "{from}"},
    Phrase{"washers at screws",
           "{count} under {what} at each screw ({length} in all){instead}, which is then {value} away, not {from}",
           "{count} unter {what} an jeder Schraube (zusammen {length}){instead}, das dann {value} entfernt ist, nicht "
           "{from}"},
    Phrase{"in place of those", " in place of those of {length}", " anstelle derer von {length}"},
    Phrase{"washers under heads", "{count} under each screw head of {what} ({length} in all)",
           "{count} unter jedem Schraubenkopf von {what} (zusammen {length})"},
    Phrase{"a washer", "a washer", "eine Unterlegscheibe"},
    Phrase{"two washers", "two washers", "zwei Unterlegscheiben"},
    Phrase{"other screw", "screws {what}, {value} long, in place of {from}",
           "Schrauben {what}, {value} lang, statt {from}"},
    Phrase{"other place", "{what} in {to}", "{what} in {to}"},
    Phrase{"adapter", "{what} in an adapter ({to})", "{what} in einem Adapter ({to})"},
    Phrase{"turned plug", "an angled plug that needs at most {value} with its bend, not {from}",
           "ein Winkelstecker, der mit seiner Biegung höchstens {value} braucht, nicht {from}"},
    Phrase{"turned end", "{what} turned end for end", "{what} um 180 Grad gedreht"},
    Phrase{"turned", "{what} turned to stand {to}", "{what} anders herum eingesetzt ({to})"},
    Phrase{"opening", "an opening of {width} x {height} in {what}", "ein Ausschnitt von {width} x {height} in {what}"},
    Phrase{"other drive", "{to} in place of {what}", "{to} statt {what}"},
    Phrase{"runs warmer", "it runs warmer", "es wird wärmer"},
    Phrase{"runs slower", "it runs slower", "es läuft langsamer"},
    Phrase{"warranty", "the machine's warranty may end", "die Garantie des Geräts kann erlöschen"},
    Phrase{"metal work", "work on metal", "Arbeit am Blech"},
    Phrase{"screws", "a few small parts", "ein paar Kleinteile"},
    Phrase{"less capacity", "perhaps less storage", "vielleicht weniger Speicherplatz"},
    Phrase{"cannot be undone", "it cannot be undone", "es lässt sich nicht rückgängig machen"},
    Phrase{"screws longer",
           "How it is held is not described: take screws that are longer by as much, so that as many turns hold.",
           "Wie es befestigt ist, ist nicht beschrieben: Nehmen Sie um ebenso viel längere Schrauben, damit gleich "
           "viele Gewindegänge halten."},
    Phrase{
        "no screw suits",
        "No usual screw length suits then: each would go into its thread by less than one diameter, or deeper than "
        "those of now do. See how deep that is, and take screws that go in so far.",
        "Keine übliche Schraubenlänge passt dann: Jede griffe um weniger als einen Durchmesser ins Gewinde oder "
        "ginge tiefer hinein als die jetzigen. Sehen Sie nach, wie tief es ist, und nehmen Sie Schrauben, die so weit "
        "greifen."},
    Phrase{"opening moves",
           "The rear opening is not described: a raised board's connectors move in it, and cables must still reach.",
           "Die Öffnung hinten ist nicht beschrieben: Die Anschlüsse einer höher gesetzten Platine wandern darin, und "
           "Kabel müssen noch reichen."},
    Phrase{"brackets move", "Cards in this board rise with it: see that their brackets still reach the rail.",
           "Karten in dieser Platine kommen mit hoch: Prüfen Sie, ob ihre Slotbleche noch an die Halterung reichen."},
    Phrase{"hole there", "Only if the board has a hole or a nut there: look before you buy.",
           "Nur, wenn die Platine dort ein Loch oder eine Mutter hat: vor dem Kauf nachsehen."},
    Phrase{"sheet only",
           "Only if it is plain sheet and nothing behind it is live: how far to keep off copper is yours to judge.",
           "Nur, wenn es blankes Blech ist und dahinter nichts unter Spannung steht: Wie weit Sie von Kupfer "
           "fernbleiben, müssen Sie selbst beurteilen."},
    Phrase{
        "stands out",
        "Then {what} stands out of {of} by {by}, by {most} in the worst case: see what is there, and that nothing can "
        "touch it.",
        "Danach steht {what} um {by} aus {of} heraus, schlimmstenfalls um {most}: Sehen Sie nach, was dort ist, und "
        "dass nichts es berühren kann."},
    Phrase{
        "stands out alone",
        "Without what else changes, {what} then stands out of {of} by {by}, by {most} in the worst case: see what is "
        "there, and that nothing can touch it.",
        "Ohne das, was sich sonst ändert, steht {what} danach um {by} aus {of} heraus, schlimmstenfalls um {most}: "
        "Sehen Sie nach, was dort ist, und dass nichts es berühren kann."},
    Phrase{"unknown length", "an unknown length", "ein unbekanntes Maß"},
    Phrase{"chips differ",
           "A pad pressed so far evens out less: see that it touches every chip that it should, and bends no card.",
           "Ein so stark gepresstes Pad gleicht weniger aus: Prüfen Sie, dass es jeden Chip berührt, den es soll, und "
           "keine Karte biegt."},
    Phrase{"sizes of adapter", "Adapters have no standard: measure the one that you buy.",
           "Adapter sind nicht genormt: Messen Sie den, den Sie kaufen."},
    Phrase{"money unknown", "What it costs is not known here.", "Was es kostet, ist hier nicht bekannt."},
    Phrase{"data moves", "What the computer needs from the drive that is not taken has to be copied first.",
           "Was der Computer von dem Laufwerk braucht, das nicht genommen wird, muss vorher kopiert werden."},

    // shopping
    Phrase{"buy caption", "Parts for fitting it", "Teile für den Einbau"},
    Phrase{"buy count", "Number", "Anzahl"},
    Phrase{"buy part", "Part", "Teil"},
    Phrase{"buy what", "What to ask for", "Wonach Sie fragen"},
    Phrase{"buy notes", "Note", "Hinweis"},
    Phrase{"buy or", "or {what}: {when}", "oder {what}: {when}"},
    Phrase{"buy never", "never {what}: {when}", "niemals {what}: {when}"},
    Phrase{"buy no screws",
           "The description names no screws: what fastens it (a latch, rails, a bracket's screw) is not in the list.",
           "Die Beschreibung nennt keine Schrauben: Was es hält (ein Riegel, Schienen, die Schraube eines Slotblechs), "
           "steht nicht in der Liste."},
    Phrase{"buy none", "Nothing has to be bought besides.", "Sonst ist nichts zu kaufen."},
    Phrase{"kind screw", "screw", "Schraube"},
    Phrase{"kind washer", "washer", "Unterlegscheibe"},
    Phrase{"kind spacer", "spacer", "Abstandhülse"},
    Phrase{"kind stand-off", "stand-off", "Abstandhalter"},
    Phrase{"kind nut", "nut", "Mutter"},
    Phrase{"kind pad", "heat-conducting pad", "Wärmeleitpad"},
    Phrase{"kind heatsink", "heatsink", "Kühlkörper"},
    Phrase{"kind adapter", "adapter", "Adapter"},
    Phrase{"kind drive", "drive", "Laufwerk"},
    Phrase{"adapter/m2-on-x4", "carrier: one M.2 card on a PCIe x4 card",
           "Trägerkarte: eine M.2-Karte auf einer PCIe-x4-Karte"},
    Phrase{"adapter/m2-on-x8", "carrier: two M.2 cards on a PCIe x8 card",
           "Trägerkarte: zwei M.2-Karten auf einer PCIe-x8-Karte"},
    Phrase{"adapter/m2-on-x16", "carrier: four M.2 cards on a PCIe x16 card",
           "Trägerkarte: vier M.2-Karten auf einer PCIe-x16-Karte"},
    Phrase{"adapter/m2-2242-to-2280", "length extender: a 2242 card where a 2280 goes",
           "Verlängerung: eine 2242-Karte, wo eine 2280 hingehört"},
    Phrase{"adapter/m2-2230-to-2280", "length extender: a 2230 card where a 2280 goes",
           "Verlängerung: eine 2230-Karte, wo eine 2280 hingehört"},
    Phrase{"adapter/m2-sata-in-2.5in", "shell: an M.2 SATA card in a 2.5-inch case, 7 mm",
           "Gehäuse: eine M.2-SATA-Karte im 2,5-Zoll-Gehäuse, 7 mm"},
    Phrase{"adapter/msata-in-2.5in", "shell: an mSATA card in a 2.5-inch case, 7 mm",
           "Gehäuse: eine mSATA-Karte im 2,5-Zoll-Gehäuse, 7 mm"},
    Phrase{"adapter/2.5in-in-3.5in", "bracket: a 2.5-inch drive in the middle of a 3.5-inch place",
           "Einbaurahmen: ein 2,5-Zoll-Laufwerk mitten in einem 3,5-Zoll-Platz"},
    Phrase{"adapter/2.5in-in-3.5in-flush", "carrier: a 2.5-inch drive at the edge of a 3.5-inch place",
           "Träger: ein 2,5-Zoll-Laufwerk am Rand eines 3,5-Zoll-Platzes"},
    Phrase{"adapter/two-2.5in-in-3.5in", "bracket: two 2.5-inch drives, one over the other, in a 3.5-inch place",
           "Einbaurahmen: zwei 2,5-Zoll-Laufwerke übereinander in einem 3,5-Zoll-Platz"},
    Phrase{"adapter/3.5in-in-5.25in", "rails: a 3.5-inch drive in a 5.25-inch bay",
           "Schienen: ein 3,5-Zoll-Laufwerk in einem 5,25-Zoll-Schacht"},
    Phrase{"adapter/u2-on-m2", "cable: a U.2 drive from an M.2 socket", "Kabel: ein U.2-Laufwerk an einer M.2-Buchse"},
    Phrase{"or other driver", "the same head with another recess, which takes another driver",
           "gleicher Kopf mit anderem Antrieb, braucht einen anderen Schraubendreher"},
    Phrase{"or taller head", "where its head, up to {mm} high, has room", "wo ihr Kopf, bis {mm} hoch, Platz hat"},
    Phrase{"or smaller washer", "less wide, at least {mm}, and still wider than the holes",
           "weniger breit, mindestens {mm}, und noch breiter als die Löcher"},
    Phrase{"never thread", "it looks alike, but is {mm} off in diameter and strips the thread",
           "sieht gleich aus, weicht aber {mm} im Durchmesser ab und zerstört das Gewinde"},
    Phrase{"never head", "its head may stand {mm} too high over the card",
           "ihr Kopf kann {mm} zu hoch über der Karte stehen"},
    Phrase{"never paste", "it does not fill the gap that the pad fills",
           "sie füllt den Spalt nicht, den das Pad füllt"},
    Phrase{"note wrong length", "Not the length described, {mm}: that one is wrong here.",
           "Nicht die beschriebene Länge, {mm}: Die ist hier falsch."},
    Phrase{"note wrong thread", "Not the thread described: the drive has this one.",
           "Nicht das beschriebene Gewinde: Das Laufwerk hat dieses."},
    Phrase{"note length open", "Its length is not settled: take one that surely holds and bottoms nowhere.",
           "Ihre Länge ist offen: Nehmen Sie eine, die sicher hält und nirgends aufsitzt."},
    Phrase{"note not sold", "No such size is known to be sold: ask, or cut to length.",
           "Diese Größe ist nicht als Handelsware bekannt: nachfragen oder ablängen."},
    Phrase{"note with board", "It often lies in the computer's box: look there first (common practice, no source).",
           "Liegt oft im Karton des Computers: dort zuerst nachsehen (übliche Erfahrung, ohne Quelle)."},
    Phrase{"note stands there",
           "The description has one there: look whether it is, or lies in the computer's box, before you buy one.",
           "Laut Beschreibung ist dort einer: vor dem Kauf nachsehen, ob er sitzt oder im Karton des Computers liegt."},
    Phrase{"note measure", "The check reckons closer than such parts are made: measure what you buy.",
           "Die Prüfung rechnet genauer, als solche Teile gefertigt sind: Messen Sie, was Sie kaufen."},
    Phrase{"note wide holes", "The holes may be wide; it goes under the screw head.",
           "Die Löcher können weit sein; sie kommt unter den Schraubenkopf."},
    Phrase{"note no washer",
           "The holes may be wide, but with a washer no usual length surely holds without going too deep: none is "
           "listed.",
           "Die Löcher können weit sein, aber mit Unterlegscheibe hält keine übliche Länge sicher, ohne zu tief zu "
           "reichen: Es ist keine aufgeführt."},
    Phrase{"note over washer", "Not the length described, {mm}: under the washer that one would not surely hold.",
           "Nicht die beschriebene Länge, {mm}: Mit der Unterlegscheibe hielte die nicht sicher."},
    Phrase{"note wide spacer", "The holes are wide: take one at least {mm} across (common practice, no source).",
           "Die Löcher sind weit: eine mit mindestens {mm} Außendurchmesser nehmen (übliche Erfahrung, ohne Quelle)."},
    Phrase{"note each screw",
           "For {part}, one set at each of its screws; four are taken, since how many it has is not said.",
           "Für {part}, je Schraube ein Satz; gerechnet ist mit vier, denn ihre Zahl ist nicht angegeben."},
    Phrase{"note short",
           "Not the {mm} long ones of the file: over the spacers these go into their thread by less than one diameter. "
           "See first how deep it is.",
           "Nicht die {mm} langen der Datei: Über den Abstandhülsen greifen sie um weniger als einen Durchmesser ins "
           "Gewinde. Sehen Sie vorher nach, wie tief es ist."},
    Phrase{"note longer", "Over the spacers; only where the screws that came out are shorter.",
           "Über den Abstandhülsen; nur, wenn die ausgebauten Schrauben kürzer sind."},
    Phrase{"note own screws", "The screws that hold the drive in it are not counted: see what came with it.",
           "Die Schrauben, die das Laufwerk darin halten, sind nicht gezählt: Sehen Sie nach, was beiliegt."},

    // steps
    Phrase{"steps tools", "Tools: {tools}.", "Werkzeug: {tools}."},
    Phrase{"steps none", "As it does not fit, there is nothing to fit yet.",
           "Da es nicht passt, gibt es noch nichts einzubauen."},
    Phrase{"steps marginal", "Only some builds fit: measure before you begin.",
           "Nur bei manchen Geräten passt es: vor dem Anfangen nachmessen."},
    Phrase{"steps changed", "These steps are with the change made.",
           "Diese Schritte gelten mit der gemachten Änderung."},
    Phrase{"step back up", "Copy what must not be lost off every drive that you will touch, onto another machine.",
           "Kopieren Sie alles, was nicht verloren gehen darf, von jedem Laufwerk, das Sie anfassen, auf ein anderes "
           "Gerät."},
    Phrase{"step power off",
           "Shut down, switch off and pull the mains plug; in a laptop disconnect the battery before all else.",
           "Fahren Sie den Computer herunter, schalten Sie ihn aus und ziehen Sie den Netzstecker; beim Notebook "
           "klemmen Sie als Erstes den Akku ab."},
    Phrase{"step touch metal", "Touch bare metal of the case, and again whenever you come back to it.",
           "Berühren Sie blankes Metall des Gehäuses, und jedes Mal wieder, wenn Sie zum Gerät zurückkommen."},
    Phrase{"step drill",
           "If the holes of {where} are not there yet: take boards and drives out of the case, drill after the 1:1 "
           "template, deburr, and clear every chip away.",
           "Falls die Löcher von {where} noch fehlen: Nehmen Sie Platinen und Laufwerke aus dem Gehäuse, bohren Sie "
           "nach der 1:1-Schablone, entgraten Sie und entfernen Sie jeden Span."},
    Phrase{"step take out", "Take out {what}, and keep its screws together.",
           "Nehmen Sie {what} heraus und legen Sie die Schrauben zusammen beiseite."},
    Phrase{
        "step take out screwed", "Undo the {thread} screws of {what}{tool}, take it out and keep its screws together.",
        "Lösen Sie die {thread}-Schrauben von {what}{tool}, bauen Sie es aus und legen Sie die Schrauben zusammen ab."},
    Phrase{"step put in adapter", "Put {what} into {where} and fasten it there, hand-tight.",
           "Setzen Sie {what} in {where} ein und befestigen Sie es dort handfest."},
    Phrase{"step screw stand-offs", "Screw {fasteners} into {where}, hand-tight.",
           "Schrauben Sie {fasteners} handfest in {where}."},
    Phrase{"step set spacers", "Set {count} spacers over the holes of {where}; a dab of tape holds them.",
           "Setzen Sie {count} Abstandhülsen auf die Löcher von {where}; ein Stück Klebeband hält sie."},
    Phrase{"step set spacers of",
           "Set {count} spacers of {length} over the holes of {where}; a dab of tape holds them.",
           "Setzen Sie {count} Abstandhülsen von {length} auf die Löcher von {where}; ein Stück Klebeband hält sie."},
    Phrase{"step set spacers under", "See that under {where} there is {between} at each screw.",
           "Prüfen Sie, dass unter {where} an jeder Schraube {between} liegt."},
    Phrase{"between spacer", "a spacer of {length}", "eine Abstandhülse von {length}"},
    Phrase{"between washer", "a washer of {length}", "eine Unterlegscheibe von {length}"},
    Phrase{"between washers", "a pair of washers ({length} in all)", "ein Paar Unterlegscheiben (zusammen {length})"},
    Phrase{
        "step longer screws",
        "Screws {screw} go into their thread by less than one diameter then: longer ones are needed, at least "
        "{longer}; see first that the thread is as deep.",
        "Schrauben {screw} greifen dann um weniger als einen Durchmesser ins Gewinde: Es braucht längere, mindestens "
        "{longer}; sehen Sie vorher nach, ob das Gewinde so tief ist."},
    Phrase{"step peel", "Peel the films off both faces of {what} and keep your fingers off them.",
           "Ziehen Sie die Folien von beiden Seiten ab ({what}) und fassen Sie die Flächen nicht an."},
    Phrase{"step lay pad", "Lay {what} on the chips of {where}, flat and without a bubble.",
           "Legen Sie {what} flach und ohne Blase auf die Chips von {where}."},
    Phrase{"step set heatsink", "Set {what} on {where}, straight down; do not slide it.",
           "Setzen Sie {what} gerade von oben auf {where}; nicht verschieben."},
    Phrase{"step take off", "If {what} is on {where} already, take it off, and its pad with it.",
           "Falls {what} schon auf {where} sitzt: Nehmen Sie es ab, samt Wärmeleitpad."},
    Phrase{
        "step set stand-off",
        "Set the stand-off at the {what} hole of {where}, hand-tight; if there is neither a hole nor a nut, stop here.",
        "Setzen Sie den Abstandhalter am {what}er Loch von {where} handfest ein; ist dort weder Loch noch Mutter, "
        "hören Sie hier auf."},
    Phrase{"step set stand-off high", "Set a stand-off {length} high in {where} in place of the one there, hand-tight.",
           "Setzen Sie in {where} statt des vorhandenen einen {length} hohen Abstandhalter handfest ein."},
    Phrase{"step cut",
           "Take boards and drives out of the case, mark the opening in {where} and cut or file it out; deburr its "
           "edges and clear every chip away.",
           "Nehmen Sie Platinen und Laufwerke aus dem Gehäuse, reißen Sie den Ausschnitt in {where} an und schneiden "
           "oder feilen Sie ihn heraus; entgraten Sie die Kanten und entfernen Sie jeden Span."},
    Phrase{"step put in", "Put {what} to its place, {where}{way}. Never force it.",
           "Setzen Sie {what} an seinen Platz, {where}{way}. Niemals mit Gewalt."},
    Phrase{"step fasten", "Fasten it as {where} asks: a latch, rails, a bracket's screw.",
           "Befestigen Sie es so, wie es {where} vorsieht: Riegel, Schienen oder die Schraube eines Slotblechs."},
    Phrase{"step screw", "Drive {fasteners}{tool}, hand-tight.", "Drehen Sie {fasteners}{tool} handfest ein."},
    Phrase{"step screws",
           "Drive {fasteners}{tool}, crosswise and hand-tight: start all of them before you tighten one.",
           "Drehen Sie {fasteners}{tool} über Kreuz und handfest ein: erst alle ansetzen, dann festziehen."},
    Phrase{"step outside",
           "They go through the sheet into the stand-offs: take the sheet's thickness and at least two threads, and "
           "less than reaches the stud.",
           "Sie gehen durch das Blech in die Abstandhalter: Länge gleich Blechdicke plus mindestens zwei Gewindegänge, "
           "aber weniger, als bis zum Bolzen reicht."},
    Phrase{"step hold nuts", "Turn on {fasteners}{tool}, hand-tight.", "Drehen Sie {fasteners}{tool} handfest auf."},
    Phrase{"step plug", "Plug the cables into {what}, with no strain on them.",
           "Stecken Sie die Kabel an {what}, ohne Zug."},
    Phrase{"step look",
           "Look along {what} from the side, with a lamp behind it: it lies straight, its connector is all the way in, "
           "nothing is pinched, and no screw is left over.",
           "Sehen Sie von der Seite an {what} entlang, mit einer Lampe dahinter: Es liegt gerade, der Anschluss steckt "
           "ganz, nichts ist eingeklemmt, und keine Schraube ist übrig."},
    Phrase{"step put back", "Put {what} back with its own screws.",
           "Setzen Sie {what} mit den eigenen Schrauben wieder ein."},
    Phrase{"step put back with", "Put {what} back with its own screws, {screw}.",
           "Bauen Sie {what} mit den eigenen Schrauben wieder ein, {screw}."},
    Phrase{
        "step put back over spacers",
        "Put {what} back with {between} at each screw, and with screws that are longer by as much if its own hold no "
        "more.",
        "Bauen Sie {what} wieder ein, an jeder Schraube {between}, und mit um ebenso viel längeren Schrauben, wenn die "
        "eigenen nicht mehr halten."},
    Phrase{"step put back over spacers only", "Put {what} back with {between} at each screw.",
           "Bauen Sie {what} wieder ein, an jeder Schraube {between}."},
    Phrase{
        "step put back over spacers with",
        "Put {what} back with screws {screw} and {between} at each screw; screws that came out shorter are too short "
        "then.",
        "Bauen Sie {what} mit Schrauben {screw} wieder ein, an jeder Schraube {between}; kürzere, die herauskamen, "
        "sind dann zu kurz."},
    Phrase{"step start up",
           "Connect battery and mains, start, and see that {what} is there with its full capacity. Keep the copy until "
           "it is.",
           "Schließen Sie Akku und Netz wieder an, schalten Sie ein und sehen Sie nach, ob {what} mit voller Größe da "
           "ist. Behalten Sie die Kopie bis dahin."},
    Phrase{"torque", "No source gives a torque.", "Ein Drehmoment nennt keine Quelle."},
    Phrase{"one screw", "the screw{kind}", "die Schraube{kind}"},
    Phrase{"many screws", "the {count} screws{kind}", "die {count} Schrauben{kind}"},
    Phrase{"one nut", "the nut{kind}", "die Mutter{kind}"},
    Phrase{"many nuts", "the {count} nuts{kind}", "die {count} Muttern{kind}"},
    Phrase{"one stand-off", "the stand-off{kind}", "den Abstandhalter{kind}"},
    Phrase{"many stand-offs", "the {count} stand-offs{kind}", "die {count} Abstandhalter{kind}"},
    Phrase{"of thread", " {thread}", " {thread}"},
    Phrase{"of thread long", " {thread}, {length} long", " {thread}, {length} lang"},
    Phrase{"with tool", " with {tool}", " mit {tool}"},
    Phrase{"tool fingers", "your fingers", "den Fingern"},
    Phrase{"tool driver", "screwdriver {size}", "Schraubendreher {size}"},
    Phrase{"tool short", "short screwdriver {size}", "kurzer Schraubendreher {size}"},
    Phrase{"tool long", "long screwdriver {size}", "langer Schraubendreher {size}"},
    Phrase{"tool bit", "{size} bit in a low ratchet", "Bit {size} in einer flachen Ratsche"},
    Phrase{"with driver", "screwdriver {size}", "dem Schraubendreher {size}"},
    Phrase{"with short", "a short screwdriver {size}", "einem kurzen Schraubendreher {size}"},
    Phrase{"with long", "a long screwdriver {size}", "einem langen Schraubendreher {size}"},
    Phrase{"with bit", "a {size} bit in a low ratchet", "einem Bit {size} in einer flachen Ratsche"},
    Phrase{"with own", "your {tool}", "Ihrem Werkzeug {tool}"},
    Phrase{"way tilted", ": push it home into its socket at {angle} degrees, then turn it down flat",
           ": im Winkel von {angle} Grad ganz in die Buchse schieben, dann flach herunterdrücken"},
    Phrase{"way searched", ": worked in by turns and shifts, until it is home",
           ": durch Drehen und Verschieben, bis es ganz sitzt"},
    Phrase{"way up", ": straight down, until it is home", ": gerade von oben, bis es ganz sitzt"},
    Phrase{"way along", ": with its connector first, until it is home", ": mit dem Anschluss voran, bis es ganz sitzt"},
    Phrase{"way back", ": with its connector last, until it is home", ": mit dem Anschluss zuletzt, bis es ganz sitzt"},
    Phrase{"way left", ": from the left, until it is home", ": von links, bis es ganz sitzt"},
    Phrase{"way right", ": from the right, until it is home", ": von rechts, bis es ganz sitzt"},
    Phrase{"way bare",
           ": the bare card first, pushed home at {angle} degrees; what it wears goes on afterward, from above",
           ": zuerst die nackte Karte im Winkel von {angle} Grad, ganz hinein; was darauf gehört, kommt danach von "
           "oben darauf"},
    Phrase{"hazard loss of data", "A drive can fail when it is moved; a copy in the same machine is none.",
           "Ein Laufwerk kann beim Bewegen ausfallen; eine Kopie im selben Gerät ist keine."},
    Phrase{"hazard mains",
           "Mains voltage kills: no hand inside with the plug in. Local rules and licensed practice come first.",
           "Netzspannung ist tödlich: keine Hand im Gerät, solange der Stecker steckt. Örtliche Vorschriften und "
           "Fachbetriebe gehen vor."},
    Phrase{"hazard battery", "A battery that is bent, pierced or shorted burns.",
           "Ein verbogener, durchstochener oder kurzgeschlossener Akku brennt."},
    Phrase{"hazard power supply",
           "Never open the power supply: it holds a dangerous voltage long after it was unplugged.",
           "Öffnen Sie niemals das Netzteil: Es hält noch lange nach dem Ausstecken eine gefährliche Spannung."},
    Phrase{"hazard static", "Static kills boards and cards unseen: hold them by their edges.",
           "Statische Ladung zerstört Platinen und Karten unbemerkt: nur an den Kanten anfassen."},
    Phrase{"hazard sharp edges", "Cut and punched sheet edges are sharp.",
           "Geschnittene und gestanzte Blechkanten sind scharf."},
    Phrase{"hazard swarf", "One metal chip on a board is a short circuit: drill away from every board.",
           "Ein Metallspan auf einer Platine ist ein Kurzschluss: abseits aller Platinen bohren."},
    Phrase{"hazard eyes", "Eye protection on.", "Schutzbrille aufsetzen."},
    Phrase{"hazard torn chips",
           "No force, and do not pry: warm it gently, then twist it slowly until the pad lets go; chips can come off "
           "with it (common practice, no source).",
           "Keine Gewalt und nicht hebeln: sanft erwärmen, dann langsam drehen, bis sich das Pad löst; sonst können "
           "Chips mit abreißen (übliche Erfahrung, ohne Quelle)."},
    Phrase{"hazard drive warranty", "Taking off what the maker put on may end the drive's warranty: ask first.",
           "Wer abnimmt, was der Hersteller aufgesetzt hat, verliert womöglich die Garantie des Laufwerks: vorher "
           "fragen."},

    // the words of the trade
    Phrase{"word TBW",
           "TBW (terabytes written): how much may be written to a drive in all before its maker's warranty ends. No "
           "lifespan.",
           "TBW (terabytes written): wie viel insgesamt auf ein Laufwerk geschrieben werden darf, bevor die Garantie "
           "des Herstellers endet. Keine Lebensdauer."},
    Phrase{"word DWPD",
           "DWPD (drive writes per day): how often its whole capacity may be written every day of the warranty.",
           "DWPD (drive writes per day): wie oft seine ganze Kapazität an jedem Tag der Garantie geschrieben werden "
           "darf."},
    Phrase{"word NVMe", "NVMe: how fast drives speak with the computer, over PCIe.",
           "NVMe: die Sprache schneller Laufwerke, über PCIe."},
    Phrase{"word SATA", "SATA: the older, slower way in which drives are connected, at most about 600 MB/s.",
           "SATA: die ältere, langsamere Art, Laufwerke anzuschließen, mit höchstens etwa 600 MB/s."},
    Phrase{"word PCIe",
           "PCIe: the faster way in which drives are connected; a drive for it is not found where only SATA is wired.",
           "PCIe: die schnellere Art, Laufwerke anzuschließen; ein Laufwerk dafür wird nicht gefunden, wo nur SATA "
           "verdrahtet ist."},
    Phrase{"word M.2",
           "M.2: the form of a drive that is a bare card, as long as a chewing gum, held by one screw. The form does "
           "not say whether it is SATA or PCIe.",
           "M.2: die Bauform eines Laufwerks als nackte Steckkarte, so lang wie ein Kaugummistreifen, mit einer "
           "Schraube gehalten. Die Form sagt nicht, ob es SATA oder PCIe ist."},
    Phrase{"word DRAM",
           "DRAM: memory of its own in which a drive keeps track of what lies where. Without it (DRAM-less) many small "
           "writes are slower.",
           "DRAM: eigener Arbeitsspeicher, in dem ein Laufwerk festhält, was wo liegt. Ohne ihn (DRAM-less) sind viele "
           "kleine Schreibvorgänge langsamer."},
    Phrase{"word HMB", "HMB (host memory buffer): a piece of the computer's memory that a drive without DRAM borrows.",
           "HMB (host memory buffer): ein Stück Arbeitsspeicher des Computers, das sich ein Laufwerk ohne DRAM leiht."},
    Phrase{"word MB/s", "MB/s: megabytes a second, here always a million bytes to the megabyte.",
           "MB/s: Megabyte pro Sekunde, hier immer eine Million Bytes pro Megabyte."},
    Phrase{"word QLC", "QLC: memory with four bits in each cell: cheap, but slow once its fast buffer is full.",
           "QLC: Speicher mit vier Bits in jeder Zelle: günstig, aber langsam, sobald der schnelle Puffer voll ist."},
    Phrase{"word worst case", "Worst case: every length at whichever of its limits leaves the least room, all at once.",
           "Worst case (ungünstigster Fall): jedes Maß an der Grenze, die am wenigsten Platz lässt, alle zugleich."},
    Phrase{"word clearance", "Clearance: the air between two parts. \"Asked\" is how much of it there has to be.",
           "Clearance (Luft): der Abstand zwischen zwei Teilen. \"Asked\" ist, wie viel davon verlangt ist."},
    Phrase{"word marginal", "Marginal: some builds fit and some do not, by how exactly their parts are made.",
           "Marginal (knapp): Manche Geräte passen, manche nicht, je nachdem, wie genau die Teile gefertigt sind."},
    Phrase{"word stand-off", "Stand-off: a small post with a thread that holds a card or a drive at a distance.",
           "Abstandhalter: ein kleiner Bolzen mit Gewinde, der eine Karte oder ein Laufwerk auf Abstand hält."},
    Phrase{"word form factor", "Form factor: shape and size of a drive.",
           "Form factor (Bauform): Form und Größe eines Laufwerks."},
    Phrase{"word heatsink", "Heatsink: a piece of metal that takes heat off the chips.",
           "Kühlkörper: ein Stück Metall, das Wärme von den Chips ableitet."},
    Phrase{"word pad", "Pad: a soft sheet that carries heat from the chips to the heatsink.",
           "Wärmeleitpad: eine weiche Lage, die Wärme von den Chips zum Kühlkörper leitet."},
};

std::string of_table(Language language, std::string_view key) {
  const auto found = std::find_if(table.begin(), table.end(), [&](const Phrase& each) { return each.key == key; });
  if (found == table.end()) return '[' + std::string(key) + ']';
  return std::string(language == Language::german ? found->german : found->english);
}

}  // namespace

std::string_view tag(Language language) {
  return language == Language::german ? "de" : "en";
}

std::optional<Language> language_called(std::string_view word) {
  for (const Language language : {Language::english, Language::german})
    if (word == tag(language)) return language;
  return std::nullopt;
}

std::string named(std::string_view text) {
  std::string out(1, name_begins);
  for (const char c : text)
    if (c != name_begins && c != name_ends) out += c;
  return out + name_ends;
}

std::string quoted(Language language, std::string_view text) {
  return language == Language::german ? "\u201E" + named(text) + "\u201C" : "\u201C" + named(text) + "\u201D";
}

std::span<const Phrase> phrases() {
  return table;
}

std::string phrase(Language language, std::string_view key, Fills fills) {
  const std::string text = of_table(language, key);
  std::string out;
  // In one pass: what is filled in is not looked into again.
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = text[at] == '{' ? text.find('}', at) : std::string::npos;
    const auto fill =
        end == std::string::npos ? fills.end() : std::find_if(fills.begin(), fills.end(), [&](const auto& each) {
          return std::string_view(text).substr(at + 1, end - at - 1) == each.first;
        });
    if (fill == fills.end()) {
      out += text[at++];
    } else {
      out += fill->second;
      at = end + 1;
    }
  }
  return out;
}

std::string localized(Language language, std::string figure) {
  if (language == Language::german) std::replace(figure.begin(), figure.end(), '.', ',');
  return figure;
}

std::string amount(Language language, double value, const std::string& currency, int decimals) {
  const std::string text = localized(language, money(value, "", decimals));
  return currency.empty() ? text : text + "\u00A0" + named(currency);
}

std::string figure(Language language, double value, int decimals) {
  return localized(language, plain(value, decimals));
}

std::string capacity(Language language, double gigabytes) {
  return localized(language, capacity(gigabytes));
}

std::string years(Language language, double value) {
  if (language == Language::english) return years(value);
  const std::string text = figure(language, value, 1);
  if (text == "0") return "weniger als 0,1 Jahren";
  return text + (text == "1" ? " Jahr" : " Jahren");
}

std::string millimetres(Language language, double mm) {
  return localized(language, in_hundredths(mm)) + " mm";
}

std::string date_words(Language language, int year, int month, int day) {
  return phrase(language, "date",
                {{"day", std::to_string(day)},
                 {"month", phrase(language, "month " + std::to_string(month))},
                 {"year", std::to_string(year)}});
}

}  // namespace baywright::output
