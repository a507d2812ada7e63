<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de">
<context>
    <name>BackupWords</name>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1; checked when it was made</source>
        <translation>%1; beim Anlegen geprüft</translation>
    </message>
    <message>
        <source>Backup of %1</source>
        <translation>Sicherung vom %1</translation>
    </message>
    <message>
        <source>All backups</source>
        <translation>Alle Sicherungen</translation>
    </message>
    <message>
        <source>It is being looked through.</source>
        <translation>Sie wird gerade durchgesehen.</translation>
    </message>
    <message>
        <source>The last thing told in it</source>
        <translation>Die letzte Eintragung darin</translation>
    </message>
    <message>
        <source>nothing yet</source>
        <translation>noch nichts</translation>
    </message>
    <message>
        <source>Pieces in the house then</source>
        <translation>Damals im Haus</translation>
    </message>
    <message>
        <source>Pieces in all</source>
        <translation>Stücke insgesamt</translation>
    </message>
    <message>
        <source>Things told</source>
        <translation>Eintragungen</translation>
    </message>
    <message>
        <source>Checked now</source>
        <translation>Gerade geprüft</translation>
    </message>
    <message>
        <source>all as it was written</source>
        <translation>alles, wie es geschrieben wurde</translation>
    </message>
    <message>
        <source>One of its pictures is gone.</source>
        <translation>Eines ihrer Bilder fehlt.</translation>
    </message>
    <message numerus="yes">
        <source>%n of its pictures are gone.</source>
        <translation>
            <numerusform>Eines ihrer Bilder fehlt.</numerusform>
            <numerusform>%n ihrer Bilder fehlen.</numerusform>
        </translation>
    </message>
    <message>
        <source>Going back to it</source>
        <translation>Zu ihr zurückgehen</translation>
    </message>
    <message>
        <source>The bench goes on as it stood then: what was told later is not in it. The file that stands there now is kept aside under a name that says so, never overwritten.</source>
        <translation>Der Werktisch geht weiter, wie er damals stand: was später eingetragen wurde, ist nicht darin. Die jetzige Datei wird unter einem eigenen Namen aufgehoben und nie überschrieben.</translation>
    </message>
    <message>
        <source>Go back to this one</source>
        <translation>Zu dieser zurückgehen</translation>
    </message>
    <message>
        <source>not before it was found good</source>
        <translation>erst, wenn sie für gut befunden ist</translation>
    </message>
</context>
<context>
    <name>BannerWords</name>
    <message>
        <source>The disk is full: what you tell is kept here and not yet stored. Make room; alerts go on.</source>
        <translation>Der Datenträger ist voll: Ihre Eintragungen bleiben hier und sind noch nicht gespeichert. Schaffen Sie Platz; Alarme laufen weiter.</translation>
    </message>
    <message>
        <source>Another program holds the bench file: what you tell is kept here and stored once it lets go.</source>
        <translation>Ein anderes Programm hält die Datei fest: Ihre Eintragungen bleiben hier und werden gespeichert, sobald es sie freigibt.</translation>
    </message>
    <message>
        <source>The bench file cannot be written: nothing new is stored. Alerts go on.</source>
        <translation>Die Datei lässt sich nicht beschreiben: nichts Neues wird gespeichert. Alarme laufen weiter.</translation>
    </message>
    <message>
        <source>The bench file was moved or removed: what you tell is kept here. Put it back, or save it elsewhere. Alerts go on.</source>
        <translation>Die Datei wurde verschoben oder gelöscht: Ihre Eintragungen bleiben hier. Legen Sie sie zurück oder speichern Sie anderswo. Alarme laufen weiter.</translation>
    </message>
    <message>
        <source>Storing does not work at present: what you tell is kept here and tried again. Alerts go on.</source>
        <translation>Speichern gelingt zurzeit nicht: Ihre Eintragungen bleiben hier, es wird weiter versucht. Alarme laufen weiter.</translation>
    </message>
    <message>
        <source>This bench can only be read: its file or folder takes no writing. Make it writable and start again. Alerts go on.</source>
        <translation>Hier kann nur gelesen werden: Datei oder Ordner sind schreibgeschützt. Machen Sie sie beschreibbar und starten Sie neu. Alarme laufen weiter.</translation>
    </message>
    <message>
        <source>This bench lies on another machine and is only read: two could write at once. Save it here to work on it. Alerts go on.</source>
        <translation>Diese Datei liegt auf einem anderen Rechner und wird nur gelesen: zwei könnten zugleich schreiben. Speichern Sie sie hier, um daran zu arbeiten. Alarme laufen weiter.</translation>
    </message>
    <message>
        <source>not now: the bench file can only be read</source>
        <translation>nicht jetzt: die Datei kann nur gelesen werden</translation>
    </message>
    <message>
        <source>Something you told could not be stored as it was told. Look it up in the log and tell it again.</source>
        <translation>Eine Eintragung ließ sich nicht so speichern, wie sie gemacht wurde. Sehen Sie im Tagebuch nach und tragen Sie sie neu ein.</translation>
    </message>
    <message>
        <source>No backup could be made: the disk is full. Make room; it is tried again after the next change.</source>
        <translation>Keine Sicherung möglich: der Datenträger ist voll. Schaffen Sie Platz; nach der nächsten Änderung wird es wieder versucht.</translation>
    </message>
    <message>
        <source>No backup was made: the bench file is not as it was written.</source>
        <translation>Keine Sicherung angelegt: die Datei ist nicht, wie sie geschrieben wurde.</translation>
    </message>
    <message>
        <source>No backup could be made. See that the folder “backups” beside the bench file can be written.</source>
        <translation>Keine Sicherung möglich. Sorgen Sie dafür, dass der Ordner „backups“ neben der Datei beschreibbar ist.</translation>
    </message>
    <message>
        <source>The disk there is full. Choose another place.</source>
        <translation>Dort ist der Datenträger voll. Wählen Sie einen anderen Ort.</translation>
    </message>
    <message>
        <source>Something stands there already. Choose another name.</source>
        <translation>Dort liegt schon etwas. Wählen Sie einen anderen Namen.</translation>
    </message>
    <message>
        <source>That folder is not there or cannot be written. Choose another place.</source>
        <translation>Diesen Ordner gibt es nicht, oder er ist schreibgeschützt. Wählen Sie einen anderen Ort.</translation>
    </message>
    <message>
        <source>The bench could not be read to its end. Go back to a backup, in Settings.</source>
        <translation>Die Datei ließ sich nicht zu Ende lesen. Gehen Sie in den Einstellungen zu einer Sicherung zurück.</translation>
    </message>
    <message>
        <source>It could not be saved there. Choose another place, or try again.</source>
        <translation>Dort ließ sich nicht speichern. Wählen Sie einen anderen Ort oder versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The bench goes on from the backup.</source>
        <translation>Es geht mit der Sicherung weiter.</translation>
    </message>
    <message>
        <source>The bench goes on from the backup. The file that stood here is kept as %1.</source>
        <translation>Es geht mit der Sicherung weiter. Die vorige Datei ist als %1 aufgehoben.</translation>
    </message>
    <message>
        <source>1 picture is gone.</source>
        <translation>1 Bild fehlt.</translation>
    </message>
    <message numerus="yes">
        <source>%n pictures are gone.</source>
        <translation>
            <numerusform>%n Bild fehlt.</numerusform>
            <numerusform>%n Bilder fehlen.</numerusform>
        </translation>
    </message>
    <message>
        <source>The backup was not put back: the disk is full. Everything is as it was.</source>
        <translation>Die Sicherung wurde nicht zurückgelegt: der Datenträger ist voll. Alles ist, wie es war.</translation>
    </message>
    <message>
        <source>The backup was not put back: it is not as it was made. Everything is as it was; choose another.</source>
        <translation>Die Sicherung wurde nicht zurückgelegt: sie ist nicht, wie sie angelegt wurde. Alles ist, wie es war; wählen Sie eine andere.</translation>
    </message>
    <message>
        <source>The backup was not put back. Everything is as it was.</source>
        <translation>Die Sicherung wurde nicht zurückgelegt. Alles ist, wie es war.</translation>
    </message>
    <message>
        <source>1 place in the bench file is not as it was written. Nothing was changed: go back to a good backup; this file is then kept aside.</source>
        <translation>An 1 Stelle ist die Datei nicht, wie sie geschrieben wurde. Nichts wurde geändert: gehen Sie zu einer guten Sicherung zurück; diese Datei wird dann aufgehoben.</translation>
    </message>
    <message numerus="yes">
        <source>%n places in the bench file are not as they were written. Nothing was changed: go back to a good backup; this file is then kept aside.</source>
        <translation>
            <numerusform>An %n Stelle ist die Datei nicht, wie sie geschrieben wurde. Nichts wurde geändert: gehen Sie zu einer guten Sicherung zurück; diese Datei wird dann aufgehoben.</numerusform>
            <numerusform>An %n Stellen ist die Datei nicht, wie sie geschrieben wurde. Nichts wurde geändert: gehen Sie zu einer guten Sicherung zurück; diese Datei wird dann aufgehoben.</numerusform>
        </translation>
    </message>
    <message>
        <source>The clock says %1, but the program last ran at %2. Set the clock right; no countdown was changed.</source>
        <translation>Die Uhr sagt %1, das Programm lief aber zuletzt um %2. Stellen Sie die Uhr richtig; kein Countdown wurde geändert.</translation>
    </message>
    <message>
        <source>The clock was put forward by %1; windows keep real elapsed time.</source>
        <translation>Die Uhr wurde um %1 vorgestellt; die Zeitfenster zählen die wirklich vergangene Zeit.</translation>
    </message>
    <message>
        <source>The clock was put back by %1; windows keep real elapsed time.</source>
        <translation>Die Uhr wurde um %1 zurückgestellt; die Zeitfenster zählen die wirklich vergangene Zeit.</translation>
    </message>
</context>
<context>
    <name>Calendar</name>
    <message>
        <source>%1 is promised</source>
        <translation>%1 ist zugesagt</translation>
    </message>
    <message>
        <source>%1 may be collected</source>
        <translation>%1 kann abgeholt werden</translation>
    </message>
</context>
<context>
    <name>CardFaceWords</name>
    <message>
        <source>not stored yet</source>
        <translation>noch nicht gespeichert</translation>
    </message>
</context>
<context>
    <name>CardWording</name>
    <message>
        <source>hands off by %1</source>
        <translation>fertig bis %1</translation>
    </message>
    <message>
        <source>should have begun %1</source>
        <translation>Beginn war fällig um %1</translation>
    </message>
    <message>
        <source>start by %1</source>
        <translation>beginnen bis %1</translation>
    </message>
    <message>
        <source>not before %1</source>
        <translation>nicht vor %1</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>seit %1</translation>
    </message>
    <message>
        <source>closed %1</source>
        <translation>zu seit %1</translation>
    </message>
    <message>
        <source>in place by %1</source>
        <translation>an Ort und Stelle bis %1</translation>
    </message>
    <message>
        <source>Hands on it</source>
        <translation>Bin dran</translation>
    </message>
    <message>
        <source>Begun</source>
        <translation>Begonnen</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>Test passed</source>
        <translation>Probe bestanden</translation>
    </message>
    <message>
        <source>Not yet</source>
        <translation>Noch nicht</translation>
    </message>
    <message>
        <source>Was done in time</source>
        <translation>War pünktlich</translation>
    </message>
    <message>
        <source>Doing it late</source>
        <translation>Hole es nach</translation>
    </message>
    <message>
        <source>Not done</source>
        <translation>Nicht gemacht</translation>
    </message>
    <message>
        <source>Hazard: see why</source>
        <translation>Gefahr: warum?</translation>
    </message>
    <message>
        <source>Hand it over</source>
        <translation>Ausgeben</translation>
    </message>
    <message>
        <source>Go on with it</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source>Cut back</source>
        <translation>Zurückschneiden</translation>
    </message>
    <message>
        <source>Rest before it is handed over</source>
        <translation>Ruhe vor der Ausgabe</translation>
    </message>
    <message>
        <source>Ready to be handed over</source>
        <translation>Bereit zur Ausgabe</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>do this now</source>
        <translation>jetzt tun</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>past its close</source>
        <translation>Fenster ist zu</translation>
    </message>
    <message>
        <source>under your hands</source>
        <translation>in Arbeit</translation>
    </message>
    <message>
        <source>stopped for now</source>
        <translation>zurzeit gesperrt</translation>
    </message>
    <message>
        <source>stalled</source>
        <translation>stockt</translation>
    </message>
    <message>
        <source>waiting</source>
        <translation>wartet</translation>
    </message>
    <message>
        <source>free to be worked on</source>
        <translation>frei zur Arbeit</translation>
    </message>
    <message>
        <source>on hold</source>
        <translation>ruht</translation>
    </message>
    <message>
        <source>ready to hand over</source>
        <translation>bereit zur Ausgabe</translation>
    </message>
    <message>
        <source>%1 sooner</source>
        <translation>%1 früher</translation>
    </message>
    <message>
        <source>%1: it is %2</source>
        <translation>%1: es hat %2</translation>
    </message>
    <message>
        <source>Stalled at %1: check by touch</source>
        <translation>Stockt bei %1: mit dem Finger prüfen</translation>
    </message>
    <message>
        <source>Stalled: check by touch</source>
        <translation>Stockt: mit dem Finger prüfen</translation>
    </message>
    <message>
        <source>until %1</source>
        <translation>bis %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 %2:%3</source>
        <translation>%1 %2:%3</translation>
    </message>
    <message>
        <source>then the %1</source>
        <translation>dann %1</translation>
    </message>
    <message>
        <source>then %1: %2</source>
        <translation>dann %1: %2</translation>
    </message>
    <message>
        <source>this place</source>
        <translation>dieser Ort</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Two need your hands: %1 as well</source>
        <translation>Zweimal Hände nötig: auch %1</translation>
    </message>
    <message>
        <source>%1 mix: %2 left</source>
        <translation>Ansatz %1: noch %2</translation>
    </message>
    <message>
        <source>test by touch</source>
        <translation>mit dem Finger prüfen</translation>
    </message>
    <message>
        <source>reading of %1 is %2 old</source>
        <translation>Messung %1 ist %2 alt</translation>
    </message>
    <message>
        <source>no reading of %1: reckoned at the rule&apos;s own</source>
        <translation>keine Messung %1: mit dem Wert der Regel gerechnet</translation>
    </message>
    <message>
        <source>may stay longer</source>
        <translation>kann länger bleiben</translation>
    </message>
    <message>
        <source>on hold: %1</source>
        <translation>ruht: %1</translation>
    </message>
    <message>
        <source>%1 is %2: too warm for what is in it</source>
        <translation>%1 hat %2: zu warm für das, was darin ist</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>test by touch until %1</source>
        <translation>mit dem Finger prüfen bis %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>opens %1</source>
        <translation>öffnet %1</translation>
    </message>
    <message>
        <source>opens about %1 to %2</source>
        <translation>öffnet etwa %1 bis %2</translation>
    </message>
    <message>
        <source>about %1 to %2</source>
        <translation>etwa %1 bis %2</translation>
    </message>
    <message>
        <source>closes %1</source>
        <translation>schließt %1</translation>
    </message>
</context>
<context>
    <name>CardWords</name>
    <message>
        <source>%1, %2: why</source>
        <translation>%1, %2: warum</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
</context>
<context>
    <name>DoorWords</name>
    <message>
        <source>by phone</source>
        <translation>am Telefon</translation>
    </message>
    <message>
        <source>by e-mail</source>
        <translation>per E-Mail</translation>
    </message>
    <message>
        <source>by letter</source>
        <translation>per Brief</translation>
    </message>
    <message>
        <source>by recorded letter</source>
        <translation>per Einschreiben</translation>
    </message>
    <message>
        <source>in person</source>
        <translation>persönlich</translation>
    </message>
    <message>
        <source>Fragments counted in: %1</source>
        <translation>Scherben beim Eingang gezählt: %1</translation>
    </message>
    <message>
        <source>Fragments counted out: %1</source>
        <translation>Scherben bei der Ausgabe gezählt: %1</translation>
    </message>
    <message>
        <source>Accessories counted in: %1</source>
        <translation>Zubehör beim Eingang gezählt: %1</translation>
    </message>
    <message>
        <source>Accessories counted out: %1</source>
        <translation>Zubehör bei der Ausgabe gezählt: %1</translation>
    </message>
    <message>
        <source>Came back: a join gave way</source>
        <translation>Kam zurück: eine Klebung hat nachgegeben</translation>
    </message>
    <message>
        <source>Came back: broken anew</source>
        <translation>Kam zurück: neu zerbrochen</translation>
    </message>
    <message>
        <source>Came back: a fragment was found</source>
        <translation>Kam zurück: eine Scherbe fand sich</translation>
    </message>
    <message>
        <source>Came back</source>
        <translation>Kam zurück</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>Received</source>
        <translation>Eingegangen</translation>
    </message>
    <message>
        <source>What gave way: the batch</source>
        <translation>Nachgegeben hat: die Charge</translation>
    </message>
    <message>
        <source>What gave way: the join</source>
        <translation>Nachgegeben hat: die Klebung</translation>
    </message>
    <message>
        <source>Fragments found: %1</source>
        <translation>Scherben gefunden: %1</translation>
    </message>
    <message>
        <source>Cut out of it: %1</source>
        <translation>Herausgeschnitten: %1</translation>
    </message>
    <message>
        <source>Promised for %1</source>
        <translation>Zugesagt für %1</translation>
    </message>
    <message>
        <source>Price agreed: %1</source>
        <translation>Preis vereinbart: %1</translation>
    </message>
    <message>
        <source>Given back: %1</source>
        <translation>Zurückgegeben: %1</translation>
    </message>
    <message>
        <source>Paid: %1</source>
        <translation>Bezahlt: %1</translation>
    </message>
    <message>
        <source>Notice given that it lies here unclaimed, %1</source>
        <translation>Mitgeteilt, dass es nicht abgeholt ist, %1</translation>
    </message>
    <message>
        <source>Its owner was told, %1</source>
        <translation>Eigentümer benachrichtigt, %1</translation>
    </message>
    <message>
        <source>May go before the wait is over</source>
        <translation>Darf vor Ende der Wartezeit gehen</translation>
    </message>
    <message>
        <source>Consent signed on the screen</source>
        <translation>Einwilligung am Bildschirm unterschrieben</translation>
    </message>
    <message>
        <source>Consent signed on paper</source>
        <translation>Einwilligung auf Papier unterschrieben</translation>
    </message>
    <message>
        <source>1 piece may be collected</source>
        <translation>1 Stück kann abgeholt werden</translation>
    </message>
    <message numerus="yes">
        <source>%n pieces may be collected</source>
        <translation>
            <numerusform>%n Stück kann abgeholt werden</numerusform>
            <numerusform>%n Stücke können abgeholt werden</numerusform>
        </translation>
    </message>
    <message>
        <source>1 piece is late</source>
        <translation>1 Stück ist überfällig</translation>
    </message>
    <message numerus="yes">
        <source>%n pieces are late</source>
        <translation>
            <numerusform>%n Stück ist überfällig</numerusform>
            <numerusform>%n Stücke sind überfällig</numerusform>
        </translation>
    </message>
    <message>
        <source>1 piece waits for its owner</source>
        <translation>1 Stück wartet auf seinen Eigentümer</translation>
    </message>
    <message numerus="yes">
        <source>%n pieces wait for their owners</source>
        <translation>
            <numerusform>%n Stück wartet auf seinen Eigentümer</numerusform>
            <numerusform>%n Stücke warten auf ihre Eigentümer</numerusform>
        </translation>
    </message>
    <message>
        <source>1 owner has to be told of a later day</source>
        <translation>1 Eigentümer muss von einem späteren Tag erfahren</translation>
    </message>
    <message numerus="yes">
        <source>%n owners have to be told of a later day</source>
        <translation>
            <numerusform>%n Eigentümer muss von einem späteren Tag erfahren</numerusform>
            <numerusform>%n Eigentümer müssen von einem späteren Tag erfahren</numerusform>
        </translation>
    </message>
    <message>
        <source>1 piece lies here unclaimed: local law says what may follow</source>
        <translation>1 Stück ist nicht abgeholt: was daraus werden darf, sagt das örtliche Recht</translation>
    </message>
    <message numerus="yes">
        <source>%n pieces lie here unclaimed: local law says what may follow</source>
        <translation>
            <numerusform>%n Stück ist nicht abgeholt: was daraus werden darf, sagt das örtliche Recht</numerusform>
            <numerusform>%n Stücke sind nicht abgeholt: was daraus werden darf, sagt das örtliche Recht</numerusform>
        </translation>
    </message>
    <message>
        <source>That is a day too early</source>
        <translation>Das ist einen Tag zu früh</translation>
    </message>
    <message numerus="yes">
        <source>That is %n days too early</source>
        <translation>
            <numerusform>Das ist %n Tag zu früh</numerusform>
            <numerusform>Das ist %n Tage zu früh</numerusform>
        </translation>
    </message>
    <message>
        <source>%1: the work takes until %2 at the least</source>
        <translation>%1: die Arbeit dauert mindestens bis %2</translation>
    </message>
    <message>
        <source>%1: its %2 waits until %3 at the least</source>
        <translation>%1: %2 braucht mindestens bis %3</translation>
    </message>
    <message>
        <source>waits for its owner&apos;s answer</source>
        <translation>wartet auf Antwort des Eigentümers</translation>
    </message>
    <message>
        <source>asked about</source>
        <translation>angefragt</translation>
    </message>
    <message>
        <source>received, nothing agreed yet</source>
        <translation>eingegangen, noch nichts vereinbart</translation>
    </message>
    <message>
        <source>agreed, not begun</source>
        <translation>vereinbart, nicht begonnen</translation>
    </message>
    <message>
        <source>on the bench</source>
        <translation>am Werktisch</translation>
    </message>
    <message>
        <source>may be collected</source>
        <translation>kann abgeholt werden</translation>
    </message>
    <message>
        <source>handed over</source>
        <translation>ausgegeben</translation>
    </message>
    <message>
        <source>went back unmended</source>
        <translation>ging unrestauriert zurück</translation>
    </message>
    <message>
        <source>resting, may be collected from %1</source>
        <translation>ruht, abholbar ab %1</translation>
    </message>
    <message>
        <source>resting</source>
        <translation>ruht</translation>
    </message>
    <message>
        <source>chip</source>
        <translation>Abplatzung</translation>
    </message>
    <message>
        <source>crack</source>
        <translation>Riss</translation>
    </message>
    <message>
        <source>loss</source>
        <translation>Fehlstelle</translation>
    </message>
    <message>
        <source>old mend</source>
        <translation>alte Restaurierung</translation>
    </message>
    <message>
        <source>stain</source>
        <translation>Fleck</translation>
    </message>
</context>
<context>
    <name>FigureWords</name>
    <message>
        <source>days</source>
        <translation>Tage</translation>
    </message>
    <message>
        <source>h</source>
        <translation>h</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>s</source>
        <translation>s</translation>
    </message>
    <message>
        <source>published standard or paper</source>
        <translation>veröffentlichte Norm oder Arbeit</translation>
    </message>
    <message>
        <source>museum or maker&apos;s sheet</source>
        <translation>Blatt eines Museums oder Herstellers</translation>
    </message>
    <message>
        <source>studio page</source>
        <translation>Seite eines Ateliers</translation>
    </message>
    <message>
        <source>worked out from other figures</source>
        <translation>aus anderen Zahlen errechnet</translation>
    </message>
    <message>
        <source>from memory</source>
        <translation>aus dem Gedächtnis</translation>
    </message>
    <message>
        <source>common practice, no source</source>
        <translation>übliche Praxis, ohne Quelle</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>°F</source>
        <translation>°F</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>“%1”</source>
        <translation>„%1“</translation>
    </message>
    <message>
        <source>from the first touch of %1</source>
        <translation>ab der ersten Berührung von %1</translation>
    </message>
    <message>
        <source>from the last touch of %1</source>
        <translation>ab der letzten Berührung von %1</translation>
    </message>
    <message>
        <source>from mixing for %1</source>
        <translation>ab dem Anmischen für %1</translation>
    </message>
    <message>
        <source>, the time before</source>
        <translation>, beim Mal davor</translation>
    </message>
    <message>
        <source>, its first time</source>
        <translation>, beim ersten Mal</translation>
    </message>
    <message>
        <source>, its last time</source>
        <translation>, beim letzten Mal</translation>
    </message>
    <message>
        <source>, the latest time</source>
        <translation>, beim jüngsten Mal</translation>
    </message>
    <message>
        <source>on a porous body</source>
        <translation>auf porösem Scherben</translation>
    </message>
    <message>
        <source>on a vitrified body</source>
        <translation>auf dicht gesintertem Scherben</translation>
    </message>
    <message>
        <source>once it was lifted or turned</source>
        <translation>sobald es angehoben oder gewendet ist</translation>
    </message>
    <message>
        <source>while it is supported</source>
        <translation>solange es gestützt ist</translation>
    </message>
    <message>
        <source>for each set</source>
        <translation>für jede Gruppe</translation>
    </message>
    <message>
        <source>for each run</source>
        <translation>für jeden Zug</translation>
    </message>
    <message>
        <source>for each pass</source>
        <translation>für jeden Auftrag</translation>
    </message>
    <message>
        <source>for each join</source>
        <translation>für jede Klebung</translation>
    </message>
</context>
<context>
    <name>FolderWords</name>
    <message>
        <source>One folder up</source>
        <translation>Einen Ordner höher</translation>
    </message>
    <message>
        <source>folder</source>
        <translation>Ordner</translation>
    </message>
</context>
<context>
    <name>Formats</name>
    <message>
        <source>d MMM</source>
        <translation>d. MMM</translation>
    </message>
    <message>
        <source>ddd d MMM</source>
        <translation>ddd d. MMM</translation>
    </message>
</context>
<context>
    <name>FrontDoorWords</name>
    <message>
        <source>The bench is open already: its window comes to the front.</source>
        <translation>Die Datei ist schon offen: ihr Fenster kommt nach vorn.</translation>
    </message>
    <message>
        <source>The window that is open goes over to this bench.</source>
        <translation>Das offene Fenster geht zu dieser Datei über.</translation>
    </message>
    <message>
        <source>The window that is open keeps its bench: something on it is running out. Finish that, or say why with --because WORDS.</source>
        <translation>Das offene Fenster behält seine Datei: etwas läuft dort gerade ab. Beenden Sie es, oder sagen Sie mit --because GRUND, warum nicht.</translation>
    </message>
    <message>
        <source>The program runs already but does not answer. Wait a moment and start it again.</source>
        <translation>Das Programm läuft schon, antwortet aber nicht. Warten Sie einen Augenblick und starten Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The program is still putting its bench away. Start it again in a moment.</source>
        <translation>Das Programm räumt seine Datei noch auf. Starten Sie es gleich noch einmal.</translation>
    </message>
</context>
<context>
    <name>Intake</name>
    <message>
        <source>Whose is it? Type a name.</source>
        <translation>Wem gehört es? Geben Sie einen Namen ein.</translation>
    </message>
    <message>
        <source>Ask for one way to reach them: a phone number or an address is enough.</source>
        <translation>Fragen Sie nach einem Weg zu ihnen: Telefonnummer oder Anschrift genügt.</translation>
    </message>
    <message>
        <source>Somebody like that was here before: say whether it is the same person.</source>
        <translation>Jemand Ähnliches war schon hier: sagen Sie, ob es dieselbe Person ist.</translation>
    </message>
    <message>
        <source>Give it a name: it is called by it at the bench.</source>
        <translation>Geben Sie ihm einen Namen: so heißt es am Werktisch.</translation>
    </message>
    <message>
        <source>Too long to be spoken: two or three short words are enough.</source>
        <translation>Zu lang zum Sprechen: zwei oder drei kurze Wörter genügen.</translation>
    </message>
    <message>
        <source>Another piece in hand is called so: give one that tells them apart by ear.</source>
        <translation>Ein anderes Stück im Haus heißt so: wählen Sie einen Namen, der sich unterscheiden lässt.</translation>
    </message>
    <message>
        <source>The name is spoken aloud, so it must not hold the owner&apos;s.</source>
        <translation>Der Name wird laut gesprochen, darf also den des Eigentümers nicht enthalten.</translation>
    </message>
    <message>
        <source>It sounds like another piece in hand: add a word, or keep both as they are.</source>
        <translation>Das klingt wie ein anderes Stück im Haus: fügen Sie ein Wort hinzu, oder lassen Sie beide, wie sie sind.</translation>
    </message>
    <message>
        <source>Choose how it is mended, or keep the page as received only.</source>
        <translation>Wählen Sie, wie es restauriert wird, oder lassen Sie das Blatt bei „eingegangen“.</translation>
    </message>
    <message>
        <source>Count the fragments: 1 to 999.</source>
        <translation>Zählen Sie die Scherben: 1 bis 999.</translation>
    </message>
    <message>
        <source>Say what came with it, or take the line away.</source>
        <translation>Sagen Sie, was dabei war, oder nehmen Sie die Zeile weg.</translation>
    </message>
    <message>
        <source>Count what came with it: 1 to 999.</source>
        <translation>Zählen Sie, was dabei war: 1 bis 999.</translation>
    </message>
    <message>
        <source>Measure again: more than nothing, at most ten metres and a ton.</source>
        <translation>Messen Sie noch einmal: mehr als nichts, höchstens zehn Meter und eine Tonne.</translation>
    </message>
    <message>
        <source>Type the value as the owner says it, or leave it empty.</source>
        <translation>Geben Sie den Wert ein, den der Eigentümer nennt, oder lassen Sie ihn leer.</translation>
    </message>
    <message>
        <source>Type the lower price first, both in one currency.</source>
        <translation>Zuerst den niedrigeren Preis, beide in einer Währung.</translation>
    </message>
    <message>
        <source>Type what was paid, or leave it empty.</source>
        <translation>Geben Sie ein, was bezahlt wurde, oder lassen Sie es leer.</translation>
    </message>
    <message>
        <source>Add the day of the signature.</source>
        <translation>Fügen Sie den Tag der Unterschrift hinzu.</translation>
    </message>
    <message>
        <source>Let the owner sign, tick &quot;signed on paper&quot;, or keep the page as received only.</source>
        <translation>Lassen Sie den Eigentümer unterschreiben, wählen Sie „auf Papier unterschrieben“, oder lassen Sie das Blatt bei „eingegangen“.</translation>
    </message>
    <message>
        <source>That day is over: promise a later one, or none.</source>
        <translation>Der Tag ist vorbei: sagen Sie einen späteren zu, oder keinen.</translation>
    </message>
    <message>
        <source>That text is too long: keep it under 100,000 characters.</source>
        <translation>Der Text ist zu lang: höchstens 100.000 Zeichen.</translation>
    </message>
</context>
<context>
    <name>Language</name>
    <message>
        <source>English</source>
        <translation>Deutsch</translation>
    </message>
</context>
<context>
    <name>NightWords</name>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1, stalled: it makes no progress where it lies</source>
        <translation>%1, stockt: dort, wo es liegt, geht nichts voran</translation>
    </message>
    <message>
        <source>%1, from %2</source>
        <translation>%1, ab %2</translation>
    </message>
    <message>
        <source>%1, about %2 to %3</source>
        <translation>%1, etwa %2 bis %3</translation>
    </message>
    <message>
        <source>Before you go: %1, start by %2 (%3)</source>
        <translation>Bevor Sie gehen: %1, beginnen bis %2 (%3)</translation>
    </message>
    <message>
        <source>Not cured by %1: %2</source>
        <translation>Nicht ausgehärtet bis %1: %2</translation>
    </message>
    <message>
        <source>Ready by %1: %2</source>
        <translation>Fertig bis %1: %2</translation>
    </message>
    <message>
        <source>Has to stay on: %1</source>
        <translation>Muss anbleiben: %1</translation>
    </message>
    <message>
        <source>Nothing closes before %1 and nothing has to cure.</source>
        <translation>Vor %1 schließt nichts, und nichts muss aushärten.</translation>
    </message>
    <message>
        <source>No bench hours are told for tomorrow: twelve hours are taken.</source>
        <translation>Für morgen sind keine Zeiten eingetragen: zwölf Stunden sind angenommen.</translation>
    </message>
    <message>
        <source>%1, may be done since %2</source>
        <translation>%1, möglich seit %2</translation>
    </message>
</context>
<context>
    <name>OpeningWords</name>
    <message>
        <source>The rule files that come with the program are missing. Install it again, or start it from its source tree.</source>
        <translation>Die Regeln, die zum Programm gehören, fehlen. Installieren Sie es neu, oder starten Sie es aus seinem Quellbaum.</translation>
    </message>
    <message>
        <source>There is no such file (%1). Check the path.</source>
        <translation>Eine solche Datei gibt es nicht (%1). Prüfen Sie den Pfad.</translation>
    </message>
    <message>
        <source>This is not a bench file (%1). It was left as it is. Choose another file.</source>
        <translation>Das ist keine Datei dieses Programms (%1). Sie blieb, wie sie war. Wählen Sie eine andere.</translation>
    </message>
    <message>
        <source>This bench file was written by a newer version of the program (%1). It was left as it is. Install the newer version to open it.</source>
        <translation>Diese Datei hat eine neuere Fassung des Programms geschrieben (%1). Sie blieb, wie sie war. Installieren Sie die neuere Fassung, um sie zu öffnen.</translation>
    </message>
    <message>
        <source>This bench file is damaged (%1). It was left as it is. Go back to the newest good backup, here or with “mendbench-desk restore BACKUP TO”; nothing is overwritten.</source>
        <translation>Diese Datei ist beschädigt (%1). Sie blieb, wie sie war. Gehen Sie zur neuesten guten Sicherung zurück, hier oder mit „mendbench-desk restore SICHERUNG ZIEL“; nichts wird überschrieben.</translation>
    </message>
    <message>
        <source>This bench is open already (%1). Close it there first.</source>
        <translation>Diese Datei ist schon offen (%1). Schließen Sie sie dort zuerst.</translation>
    </message>
    <message>
        <source>Another program is using the bench file. Close it and try again.</source>
        <translation>Ein anderes Programm benutzt die Datei. Schließen Sie es und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The bench file or its folder cannot be written (%1). Check whose it is, and that the disk is not full.</source>
        <translation>Die Datei oder ihr Ordner ist schreibgeschützt (%1). Prüfen Sie, wem sie gehört, und ob der Datenträger voll ist.</translation>
    </message>
    <message>
        <source>The file has two names or is something else than the demo (%1). It was left as it is.</source>
        <translation>Die Datei hat zwei Namen oder ist etwas anderes als die Vorführung (%1). Sie blieb, wie sie war.</translation>
    </message>
    <message>
        <source>The bench could not be opened (%1).</source>
        <translation>Die Datei ließ sich nicht öffnen (%1).</translation>
    </message>
</context>
<context>
    <name>OwnerWords</name>
    <message>
        <source>Not as it should be</source>
        <translation>Nicht, wie es sein soll</translation>
    </message>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>und %n weiterer</numerusform>
            <numerusform>und %n weitere</numerusform>
        </translation>
    </message>
    <message>
        <source>taken in</source>
        <translation>wird aufgenommen</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>bleibt draußen</translation>
    </message>
    <message>
        <source>%1 to %2 of %3</source>
        <translation>%1 bis %2 von %3</translation>
    </message>
    <message>
        <source>Those before</source>
        <translation>Die davor</translation>
    </message>
    <message>
        <source>Those after</source>
        <translation>Die danach</translation>
    </message>
    <message>
        <source>Owners from a list</source>
        <translation>Eigentümer aus einer Liste</translation>
    </message>
    <message>
        <source>Choose a card file (.vcf) out of a phone or an address book, or a table (.csv) whose first row names its columns: name, phone, mail, address, note. You see everybody before anybody is kept.</source>
        <translation>Wählen Sie eine Kartendatei (.vcf) aus Telefon oder Adressbuch, oder eine Tabelle (.csv), deren erste Zeile die Spalten nennt: name, phone, mail, address, note. Sie sehen alle, bevor jemand behalten wird.</translation>
    </message>
    <message>
        <source>No such file lies in this folder.</source>
        <translation>In diesem Ordner liegt keine solche Datei.</translation>
    </message>
    <message>
        <source>Another file</source>
        <translation>Eine andere Datei</translation>
    </message>
    <message>
        <source>It is being looked through.</source>
        <translation>Sie wird gerade durchgesehen.</translation>
    </message>
    <message>
        <source>One owner is kept. Find brings them up by name.</source>
        <translation>Ein Eigentümer ist behalten. „Suchen“ findet ihn nach Namen.</translation>
    </message>
    <message numerus="yes">
        <source>%n owners are kept. Find brings them up by name.</source>
        <translation>
            <numerusform>%n Eigentümer ist behalten. „Suchen“ findet ihn nach Namen.</numerusform>
            <numerusform>%n Eigentümer sind behalten. „Suchen“ findet sie nach Namen.</numerusform>
        </translation>
    </message>
    <message>
        <source>Nobody stands in it.</source>
        <translation>Niemand steht darin.</translation>
    </message>
    <message>
        <source>One person stands in it.</source>
        <translation>Eine Person steht darin.</translation>
    </message>
    <message numerus="yes">
        <source>%n people stand in it.</source>
        <translation>
            <numerusform>%n Person steht darin.</numerusform>
            <numerusform>%n Personen stehen darin.</numerusform>
        </translation>
    </message>
    <message>
        <source>Tap a line to leave somebody out or to take them in.</source>
        <translation>Tippen Sie eine Zeile an, um jemanden wegzulassen oder aufzunehmen.</translation>
    </message>
    <message>
        <source>One may be here already, and is left out unless you say it is somebody else.</source>
        <translation>Eine ist vielleicht schon hier und bleibt draußen, außer Sie sagen, es ist jemand anderes.</translation>
    </message>
    <message numerus="yes">
        <source>%n may be here already, and are left out unless you say it is somebody else.</source>
        <translation>
            <numerusform>%n ist vielleicht schon hier und bleibt draußen, außer Sie sagen, es ist jemand anderes.</numerusform>
            <numerusform>%n sind vielleicht schon hier und bleiben draußen, außer Sie sagen, es ist jemand anderes.</numerusform>
        </translation>
    </message>
    <message>
        <source>Take in this one</source>
        <translation>Diese aufnehmen</translation>
    </message>
    <message numerus="yes">
        <source>Take in these %n</source>
        <translation>
            <numerusform>Diese %n aufnehmen</numerusform>
            <numerusform>Diese %n aufnehmen</numerusform>
        </translation>
    </message>
    <message>
        <source>nobody is chosen</source>
        <translation>niemand ist gewählt</translation>
    </message>
</context>
<context>
    <name>PanelWords</name>
    <message>
        <source>Back to the bench</source>
        <translation>Zurück zum Werktisch</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Back: last digit away</source>
        <translation>Zurück: letzte Ziffer weg</translation>
    </message>
</context>
<context>
    <name>PaperTextWords</name>
    <message>
        <source>Words on papers</source>
        <translation>Worte auf Papieren</translation>
    </message>
    <message>
        <source>What always stands on a paper. Your own words stay in the bench file and go where it goes.</source>
        <translation>Was immer auf einem Papier steht. Eigene Worte bleiben in der Datei und gehen mit ihr.</translation>
    </message>
    <message>
        <source>your own</source>
        <translation>eigene</translation>
    </message>
    <message>
        <source>your own words</source>
        <translation>eigene Worte</translation>
    </message>
    <message>
        <source>the words that ship</source>
        <translation>die mitgelieferten Worte</translation>
    </message>
    <message>
        <source>All papers</source>
        <translation>Alle Papiere</translation>
    </message>
    <message>
        <source>One paragraph more</source>
        <translation>Ein Absatz mehr</translation>
    </message>
    <message>
        <source>Paragraph %1</source>
        <translation>Absatz %1</translation>
    </message>
    <message>
        <source>Keep these words</source>
        <translation>Diese Worte behalten</translation>
    </message>
    <message>
        <source>Back to the words that ship</source>
        <translation>Zurück zu den mitgelieferten Worten</translation>
    </message>
</context>
<context>
    <name>PapersWords</name>
    <message>
        <source>page %1 of %2</source>
        <translation>Seite %1 von %2</translation>
    </message>
    <message>
        <source>How to look after it</source>
        <translation>Wie man damit umgeht</translation>
    </message>
    <message>
        <source>Mended with</source>
        <translation>Restauriert mit</translation>
    </message>
    <message>
        <source>Questions: %1</source>
        <translation>Fragen: %1</translation>
    </message>
    <message>
        <source>Your piece is ready</source>
        <translation>Ihr Stück ist fertig</translation>
    </message>
    <message>
        <source>May be collected since</source>
        <translation>Abholbar seit</translation>
    </message>
    <message>
        <source>Still owed</source>
        <translation>Noch offen</translation>
    </message>
    <message>
        <source>Notices before this one</source>
        <translation>Mitteilungen vor dieser</translation>
    </message>
    <message>
        <source>For the studio</source>
        <translation>Für das Atelier</translation>
    </message>
    <message>
        <source>Intake receipt</source>
        <translation>Annahmebeleg</translation>
    </message>
    <message>
        <source>Quote</source>
        <translation>Kostenvoranschlag</translation>
    </message>
    <message>
        <source>Treatment record</source>
        <translation>Restaurierungsbericht</translation>
    </message>
    <message>
        <source>Care sheet</source>
        <translation>Pflegeblatt</translation>
    </message>
    <message>
        <source>Receipt at hand-over</source>
        <translation>Ausgabebeleg</translation>
    </message>
    <message>
        <source>Notice: not collected</source>
        <translation>Mitteilung: nicht abgeholt</translation>
    </message>
    <message>
        <source>Fragments</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>%1 fragments</source>
        <translation>%1 Scherben</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>in %1</source>
        <translation>in %1</translation>
    </message>
    <message>
        <source>porous: it drinks water</source>
        <translation>porös: er saugt Wasser</translation>
    </message>
    <message>
        <source>vitrified: it does not drink</source>
        <translation>dicht gesintert: er saugt nicht</translation>
    </message>
    <message>
        <source>not known; treated as porous</source>
        <translation>nicht bekannt; als porös behandelt</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1 in</source>
        <translation>%1 in</translation>
    </message>
    <message>
        <source>%1 mm</source>
        <translation>%1 mm</translation>
    </message>
    <message>
        <source>Owner</source>
        <translation>Eigentümer</translation>
    </message>
    <message>
        <source>Reached by</source>
        <translation>Erreichbar</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>Maker or origin</source>
        <translation>Werkstatt oder Herkunft</translation>
    </message>
    <message>
        <source>Marks on it</source>
        <translation>Marken darauf</translation>
    </message>
    <message>
        <source>%1 high</source>
        <translation>%1 hoch</translation>
    </message>
    <message>
        <source>%1 wide</source>
        <translation>%1 breit</translation>
    </message>
    <message>
        <source>%1 deep</source>
        <translation>%1 tief</translation>
    </message>
    <message>
        <source>wall %1</source>
        <translation>Wandstärke %1</translation>
    </message>
    <message>
        <source>%1 g</source>
        <translation>%1 g</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>Body</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>Came with it</source>
        <translation>Dabei war</translation>
    </message>
    <message>
        <source>Seen</source>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>Looked at</source>
        <translation>Betrachtet</translation>
    </message>
    <message>
        <source>Old mend</source>
        <translation>Alte Restaurierung</translation>
    </message>
    <message>
        <source>Condition</source>
        <translation>Zustand</translation>
    </message>
    <message>
        <source>What is inferred from it</source>
        <translation>Was daraus geschlossen wird</translation>
    </message>
    <message>
        <source>%1 to %2, estimate</source>
        <translation>%1 bis %2, geschätzt</translation>
    </message>
    <message>
        <source>%1, estimate</source>
        <translation>%1, geschätzt</translation>
    </message>
    <message>
        <source>signed on paper</source>
        <translation>auf Papier unterschrieben</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Paid</source>
        <translation>Bezahlt</translation>
    </message>
    <message>
        <source>Taken by</source>
        <translation>Mitgenommen von</translation>
    </message>
    <message>
        <source>A mend that can be undone.</source>
        <translation>Eine Restaurierung, die sich wieder lösen lässt.</translation>
    </message>
    <message>
        <source>The mend need not be one that can be undone.</source>
        <translation>Die Restaurierung muss sich nicht wieder lösen lassen.</translation>
    </message>
    <message>
        <source>The mend may show.</source>
        <translation>Die Restaurierung darf zu sehen sein.</translation>
    </message>
    <message>
        <source>The mend should not show.</source>
        <translation>Die Restaurierung soll nicht zu sehen sein.</translation>
    </message>
    <message>
        <source>Metal may be laid on it.</source>
        <translation>Metall darf aufgelegt werden.</translation>
    </message>
    <message>
        <source>No metal is laid on it.</source>
        <translation>Es wird kein Metall aufgelegt.</translation>
    </message>
    <message>
        <source>Afterwards it is not for food or drink.</source>
        <translation>Danach ist es nicht für Speisen und Getränke.</translation>
    </message>
    <message>
        <source>Damage that cannot be seen now may come to light.</source>
        <translation>Schäden, die jetzt nicht zu sehen sind, können zutage treten.</translation>
    </message>
    <message>
        <source>Pictures of it may be shown to others, without a name.</source>
        <translation>Bilder davon dürfen anderen gezeigt werden, ohne Namen.</translation>
    </message>
    <message>
        <source>Pictures of it are kept for the record only.</source>
        <translation>Bilder davon dienen nur der Dokumentation.</translation>
    </message>
    <message>
        <source>Declared value</source>
        <translation>Angegebener Wert</translation>
    </message>
    <message>
        <source>Promised for</source>
        <translation>Zugesagt für</translation>
    </message>
    <message>
        <source>Price band</source>
        <translation>Preisrahmen</translation>
    </message>
    <message>
        <source>Wished for</source>
        <translation>Gewünscht</translation>
    </message>
    <message>
        <source>To be done</source>
        <translation>Was gemacht wird</translation>
    </message>
    <message>
        <source>How</source>
        <translation>Wie</translation>
    </message>
    <message>
        <source>What is wanted</source>
        <translation>Was gewünscht ist</translation>
    </message>
    <message>
        <source>Agreed</source>
        <translation>Vereinbart</translation>
    </message>
    <message>
        <source>As it came in</source>
        <translation>Beim Eingang</translation>
    </message>
    <message>
        <source>to be agreed before work begins</source>
        <translation>vor Beginn der Arbeit zu vereinbaren</translation>
    </message>
    <message>
        <source>Fragments going out</source>
        <translation>Scherben bei der Ausgabe</translation>
    </message>
    <message>
        <source>Accessories going out</source>
        <translation>Zubehör bei der Ausgabe</translation>
    </message>
    <message>
        <source>Given back unmended</source>
        <translation>Unrestauriert zurück</translation>
    </message>
    <message>
        <source>On</source>
        <translation>Am</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Gemacht</translation>
    </message>
    <message>
        <source>Less goes out than came in: what is missing is named and agreed below.</source>
        <translation>Es geht weniger hinaus, als hereinkam: was fehlt, ist unten genannt und vereinbart.</translation>
    </message>
    <message>
        <source>Handed over early because</source>
        <translation>Vorzeitig ausgegeben, weil</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Who</source>
        <translation>Wer</translation>
    </message>
    <message>
        <source>Air</source>
        <translation>Luft</translation>
    </message>
    <message>
        <source>Remarks</source>
        <translation>Bemerkungen</translation>
    </message>
    <message>
        <source>otherwise than planned</source>
        <translation>anders als geplant</translation>
    </message>
    <message>
        <source>Put into it</source>
        <translation>Eingebracht</translation>
    </message>
    <message>
        <source>Batch</source>
        <translation>Charge</translation>
    </message>
    <message>
        <source>Agreed procedure</source>
        <translation>Vereinbartes Verfahren</translation>
    </message>
    <message>
        <source>Visit</source>
        <translation>Besuch</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>What was done</source>
        <translation>Was gemacht wurde</translation>
    </message>
    <message>
        <source>Nothing was told yet.</source>
        <translation>Noch wurde nichts eingetragen.</translation>
    </message>
    <message>
        <source>What is in it now</source>
        <translation>Was jetzt darin ist</translation>
    </message>
    <message>
        <source>During</source>
        <translation>Während</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>Mended by</source>
        <translation>Restauriert von</translation>
    </message>
    <message>
        <source>On the bench</source>
        <translation>Auf dem Werktisch</translation>
    </message>
    <message>
        <source>as of %1; what was told later is not on it</source>
        <translation>Stand %1; später Eingetragenes fehlt</translation>
    </message>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Als Nächstes</translation>
    </message>
    <message>
        <source>Start by</source>
        <translation>Beginnen bis</translation>
    </message>
    <message>
        <source>Closes</source>
        <translation>Schließt</translation>
    </message>
    <message>
        <source>Otherwise</source>
        <translation>Sonst</translation>
    </message>
    <message>
        <source>opens %1</source>
        <translation>öffnet %1</translation>
    </message>
    <message>
        <source>waits until %1</source>
        <translation>wartet bis %1</translation>
    </message>
    <message>
        <source>A time is a reason to test with a fingertip or a witness sample, not a promise. Warm air closes a window sooner.</source>
        <translation>Eine Zeit ist ein Anlass, mit der Fingerspitze oder einer Probe zu prüfen, kein Versprechen. Warme Luft schließt ein Zeitfenster früher.</translation>
    </message>
</context>
<context>
    <name>PhotoWords</name>
    <message>
        <source>This picture</source>
        <translation>Dieses Bild</translation>
    </message>
    <message>
        <source>%1 is no longer there. Choose it again.</source>
        <translation>%1 ist nicht mehr da. Wählen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>%1 is not a picture, whatever its name says. Choose a photo.</source>
        <translation>%1 ist kein Bild, was auch immer der Name sagt. Wählen Sie ein Foto.</translation>
    </message>
    <message>
        <source>%1 is damaged or was copied only in part. Copy it from the camera once more.</source>
        <translation>%1 ist beschädigt oder nur zum Teil kopiert. Kopieren Sie es noch einmal von der Kamera.</translation>
    </message>
    <message>
        <source>%1 is too large to show. Save a smaller copy of it and take that.</source>
        <translation>%1 ist zu groß zum Zeigen. Speichern Sie eine kleinere Kopie und nehmen Sie diese.</translation>
    </message>
    <message>
        <source>%1 cannot be read. Is it a file, and may you open it?</source>
        <translation>%1 lässt sich nicht lesen. Ist es eine Datei, und dürfen Sie sie öffnen?</translation>
    </message>
    <message>
        <source>%1 is of a kind that is not read here. Save it as JPEG or PNG and take that.</source>
        <translation>%1 ist von einer Art, die hier nicht gelesen wird. Speichern Sie es als JPEG oder PNG und nehmen Sie das.</translation>
    </message>
</context>
<context>
    <name>QObject</name>
    <message>
        <source>This backup is not as it was made. Choose another.</source>
        <translation>Diese Sicherung ist nicht, wie sie angelegt wurde. Wählen Sie eine andere.</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Verstanden</translation>
    </message>
    <message>
        <source>Not now: something you told is not stored yet. Save this bench first.</source>
        <translation>Nicht jetzt: eine Eintragung ist noch nicht gespeichert. Speichern Sie erst diese Datei.</translation>
    </message>
    <message>
        <source>The bench goes on in %1.</source>
        <translation>Es geht weiter in %1.</translation>
    </message>
    <message>
        <source>%1 was asked for. Something here is running out, so this bench stays open.</source>
        <translation>%1 wurde verlangt. Hier läuft gerade etwas ab, darum bleibt diese Datei offen.</translation>
    </message>
    <message>
        <source>No sound on this device: watch the screen.</source>
        <translation>Kein Ton auf diesem Gerät: auf den Bildschirm achten.</translation>
    </message>
</context>
<context>
    <name>ReachWords</name>
    <message>
        <source>at %1</source>
        <translation>bei %1</translation>
    </message>
    <message>
        <source>bench not read yet</source>
        <translation>Werktisch noch nicht gemessen</translation>
    </message>
    <message>
        <source>%1 of chip</source>
        <translation>%1 Ausbruch</translation>
    </message>
    <message>
        <source>%1 of seam</source>
        <translation>%1 Fuge</translation>
    </message>
    <message>
        <source>1 join</source>
        <translation>1 Klebung</translation>
    </message>
    <message numerus="yes">
        <source>%n joins</source>
        <translation>
            <numerusform>%n Klebung</numerusform>
            <numerusform>%n Klebungen</numerusform>
        </translation>
    </message>
    <message>
        <source> and </source>
        <translation> und </translation>
    </message>
    <message>
        <source>%1 s</source>
        <translation>%1 s</translation>
    </message>
    <message>
        <source>%1 and %2</source>
        <translation>%1 und %2</translation>
    </message>
    <message>
        <source>in place %1 after mixing begins (%2)</source>
        <translation>an Ort und Stelle %1 nach dem Anmischen (%2)</translation>
    </message>
    <message>
        <source>1 join from one mix</source>
        <translation>1 Klebung aus einem Ansatz</translation>
    </message>
    <message numerus="yes">
        <source>%n joins from one mix</source>
        <translation>
            <numerusform>%n Klebung aus einem Ansatz</numerusform>
            <numerusform>%n Klebungen aus einem Ansatz</numerusform>
        </translation>
    </message>
    <message>
        <source>only %1 %2: %3. %4</source>
        <translation>nur %1 %2: %3. %4</translation>
    </message>
    <message>
        <source>, then %1</source>
        <translation>, dann %1</translation>
    </message>
    <message>
        <source> or </source>
        <translation> oder </translation>
    </message>
    <message>
        <source>one run is %1 at most</source>
        <translation>ein Zug ist höchstens %1</translation>
    </message>
    <message>
        <source>%1 in</source>
        <translation>%1 in</translation>
    </message>
    <message>
        <source>%1 cm</source>
        <translation>%1 cm</translation>
    </message>
    <message>
        <source>place in %1</source>
        <translation>in %1 setzen</translation>
    </message>
    <message>
        <source>lasts %1</source>
        <translation>hält %1</translation>
    </message>
    <message>
        <source>%1 one pair of hands: %2</source>
        <translation>%1 ein Paar Hände: %2</translation>
    </message>
    <message>
        <source>, %1</source>
        <translation>, %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 from the next mix</source>
        <translation>%1 aus dem nächsten Ansatz</translation>
    </message>
    <message>
        <source>%1 it lasts %2</source>
        <translation>%1 hält er %2</translation>
    </message>
    <message>
        <source>only %1 %2: %3</source>
        <translation>nur %1 %2: %3</translation>
    </message>
    <message>
        <source>%1 one mix does %2 of it; the rest from the next</source>
        <translation>%1 schafft ein Ansatz %2 davon; der Rest aus dem nächsten</translation>
    </message>
</context>
<context>
    <name>SharedPageWords</name>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>How warmth hastens a cure</source>
        <translation>Wie Wärme das Aushärten beschleunigt</translation>
    </message>
    <message>
        <source>What must not meet</source>
        <translation>Was nicht zusammenkommen darf</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Warnhinweise</translation>
    </message>
    <message>
        <source>Habits of the bench</source>
        <translation>Gewohnheiten am Werktisch</translation>
    </message>
    <message>
        <source>to be read here; changed in the rule files</source>
        <translation>hier zu lesen; geändert wird es in den Regeldateien</translation>
    </message>
    <message>
        <source>your own numbers stand beside the shipped ones</source>
        <translation>eigene Zahlen stehen neben den mitgelieferten</translation>
    </message>
    <message>
        <source>Ratio</source>
        <translation>Verhältnis</translation>
    </message>
    <message>
        <source>Pot life at %1</source>
        <translation>Topfzeit bei %1</translation>
    </message>
    <message>
        <source>No warmer than</source>
        <translation>Nicht wärmer als</translation>
    </message>
    <message>
        <source>From an age of %1 no warmer than</source>
        <translation>Ab einem Alter von %1 nicht wärmer als</translation>
    </message>
    <message>
        <source>Up to an age of %1 no warmer than</source>
        <translation>Bis zu einem Alter von %1 nicht wärmer als</translation>
    </message>
    <message>
        <source>Before it is handed over</source>
        <translation>Bevor es ausgegeben wird</translation>
    </message>
    <message>
        <source>Full cure at %1</source>
        <translation>Durchgehärtet bei %1</translation>
    </message>
    <message>
        <source>Activation energy</source>
        <translation>Aktivierungsenergie</translation>
    </message>
    <message>
        <source>%1 (%2 to %3) kJ/mol</source>
        <translation>%1 (%2 bis %3) kJ/mol</translation>
    </message>
    <message>
        <source>No credit below</source>
        <translation>Zählt nicht unter</translation>
    </message>
    <message>
        <source>No more credit above</source>
        <translation>Zählt nicht mehr als bei</translation>
    </message>
    <message>
        <source>Goes on only between</source>
        <translation>Geht nur voran zwischen</translation>
    </message>
    <message>
        <source>%1 and %2, %3 and %4</source>
        <translation>%1 und %2, %3 und %4</translation>
    </message>
    <message>
        <source>By the clock alone</source>
        <translation>Allein nach der Uhr</translation>
    </message>
    <message>
        <source>stops the start</source>
        <translation>verbietet den Beginn</translation>
    </message>
    <message>
        <source>warns</source>
        <translation>warnt</translation>
    </message>
    <message>
        <source>reminds</source>
        <translation>erinnert</translation>
    </message>
    <message>
        <source>Temperature</source>
        <translation>Temperatur</translation>
    </message>
    <message>
        <source>As close in time as</source>
        <translation>Zeitlich so nah wie</translation>
    </message>
    <message>
        <source>Humidity</source>
        <translation>Feuchte</translation>
    </message>
    <message>
        <source>A reading at the bench holds for</source>
        <translation>Eine Messung am Werktisch gilt</translation>
    </message>
    <message>
        <source>A reading in cabinet or humid box holds for</source>
        <translation>Eine Messung in Wärmeschrank oder Feuchtkasten gilt</translation>
    </message>
    <message>
        <source>Begun and done are two taps from</source>
        <translation>Begonnen und fertig sind zweierlei ab</translation>
    </message>
    <message>
        <source>Chip that one run takes</source>
        <translation>Ausbruch für einen Zug</translation>
    </message>
    <message>
        <source>%1 cm</source>
        <translation>%1 cm</translation>
    </message>
    <message>
        <source>Seam that one run takes</source>
        <translation>Fuge für einen Zug</translation>
    </message>
</context>
<context>
    <name>ShellWords</name>
    <message>
        <source>Spaces</source>
        <translation>Räume</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
</context>
<context>
    <name>StagePageWords</name>
    <message>
        <source>row %1</source>
        <translation>Zeile %1</translation>
    </message>
    <message>
        <source>only where agreed</source>
        <translation>nur wenn vereinbart</translation>
    </message>
    <message>
        <source>by itself, no hands</source>
        <translation>von selbst, ohne Hände</translation>
    </message>
    <message>
        <source>may be %1</source>
        <translation>möglich %1</translation>
    </message>
    <message>
        <source>Hands</source>
        <translation>Hände</translation>
    </message>
    <message>
        <source>Each time</source>
        <translation>Jedes Mal</translation>
    </message>
    <message>
        <source>And for each fragment</source>
        <translation>Und für jede Scherbe</translation>
    </message>
    <message>
        <source>And for each join</source>
        <translation>Und für jede Klebung</translation>
    </message>
    <message>
        <source>And for each cm of seam</source>
        <translation>Und für jeden cm Fuge</translation>
    </message>
    <message>
        <source>And for each cm of chip</source>
        <translation>Und für jeden cm Ausbruch</translation>
    </message>
    <message>
        <source>Then it waits</source>
        <translation>Dann wartet es</translation>
    </message>
    <message>
        <source>After it</source>
        <translation>Danach</translation>
    </message>
    <message>
        <source>%1, at the longest</source>
        <translation>%1, längstens</translation>
    </message>
    <message>
        <source>its own wait</source>
        <translation>die eigene Wartezeit</translation>
    </message>
    <message>
        <source>%1 (past it the work is harder, not lost)</source>
        <translation>%1 (danach ist es mühsamer, nicht verloren)</translation>
    </message>
    <message>
        <source>%1, lost at the latest</source>
        <translation>%1, spätestens dann verloren</translation>
    </message>
    <message>
        <source>It opens</source>
        <translation>Es öffnet sich</translation>
    </message>
    <message>
        <source>Best done after</source>
        <translation>Am besten nach</translation>
    </message>
    <message>
        <source>When the fingers say</source>
        <translation>Wenn die Finger sagen</translation>
    </message>
    <message>
        <source>After “Not yet” it is asked again</source>
        <translation>Nach „Noch nicht“ wird wieder gefragt</translation>
    </message>
    <message>
        <source>It closes: hands are off by then</source>
        <translation>Es schließt sich: bis dahin fertig</translation>
    </message>
    <message>
        <source>Not to be left open at the end of the day.</source>
        <translation>Darf am Ende des Tages nicht offen bleiben.</translation>
    </message>
    <message>
        <source>Counted in seconds, not alarmed</source>
        <translation>In Sekunden gezählt, ohne Alarm</translation>
    </message>
    <message>
        <source>Done by</source>
        <translation>Fertig bis</translation>
    </message>
    <message>
        <source>At the end</source>
        <translation>Am Ende</translation>
    </message>
    <message>
        <source>Said before mixing where heat leaves less than</source>
        <translation>Vor dem Anmischen gesagt, wenn die Wärme weniger lässt als</translation>
    </message>
    <message>
        <source>Warmth</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>Every time here is true at</source>
        <translation>Jede Zeit hier gilt bei</translation>
    </message>
    <message>
        <source>Warned below</source>
        <translation>Warnung unter</translation>
    </message>
    <message>
        <source>No forecast below</source>
        <translation>Keine Vorhersage unter</translation>
    </message>
    <message>
        <source>In the warm cabinet at</source>
        <translation>Im Wärmeschrank bei</translation>
    </message>
    <message>
        <source>For so long instead</source>
        <translation>Stattdessen so lange</translation>
    </message>
    <message>
        <source>The pot lags the cabinet&apos;s air by</source>
        <translation>Das Gefäß hinkt der Luft im Schrank nach um</translation>
    </message>
    <message>
        <source>It leaves behind</source>
        <translation>Es hinterlässt</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Warnhinweise</translation>
    </message>
    <message>
        <source>The product&apos;s safety data sheet and local rules come before any line on this screen.</source>
        <translation>Das Sicherheitsdatenblatt des Produkts und die örtlichen Vorschriften gehen jeder Zeile auf diesem Bildschirm vor.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>StageWords</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>under the hands</source>
        <translation>in Arbeit</translation>
    </message>
</context>
<context>
    <name>StripWords</name>
    <message>
        <source>Mixing now</source>
        <translation>Ich mische an</translation>
    </message>
    <message>
        <source>Undo: %1</source>
        <translation>Zurücknehmen: %1</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Mixing now: %1</source>
        <translation>Ich mische an: %1</translation>
    </message>
    <message>
        <source>batch %1</source>
        <translation>Charge %1</translation>
    </message>
    <message>
        <source>batch %1. %2</source>
        <translation>Charge %1. %2</translation>
    </message>
    <message>
        <source>Mixing now: something else</source>
        <translation>Ich mische etwas anderes an</translation>
    </message>
    <message>
        <source>Other</source>
        <translation>Anderes</translation>
    </message>
</context>
<context>
    <name>ToldWords</name>
    <message>
        <source>Begun: %1</source>
        <translation>Begonnen: %1</translation>
    </message>
    <message>
        <source>Not yet: %1</source>
        <translation>Noch nicht: %1</translation>
    </message>
    <message>
        <source>Skipped: %1</source>
        <translation>Ausgelassen: %1</translation>
    </message>
    <message>
        <source>Sent back to: %1</source>
        <translation>Zurück zu: %1</translation>
    </message>
    <message>
        <source>Not done: %1</source>
        <translation>Nicht gemacht: %1</translation>
    </message>
    <message>
        <source>Doing it late: %1</source>
        <translation>Wird nachgeholt: %1</translation>
    </message>
    <message>
        <source>Once more: %1</source>
        <translation>Noch einmal: %1</translation>
    </message>
    <message>
        <source>Started all the same: %1</source>
        <translation>Trotzdem begonnen: %1</translation>
    </message>
    <message>
        <source>Hands on it: %1</source>
        <translation>Bin dran: %1</translation>
    </message>
    <message>
        <source>Agreed as well: %1</source>
        <translation>Dazu vereinbart: %1</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1 overnight: %2 to %3</source>
        <translation>%1 über Nacht: %2 bis %3</translation>
    </message>
    <message>
        <source>%1 stayed on</source>
        <translation>%1 blieb an</translation>
    </message>
    <message>
        <source>%1 went off</source>
        <translation>%1 ging aus</translation>
    </message>
    <message>
        <source>%1: nobody knows whether it stayed on</source>
        <translation>%1: niemand weiß, ob es an blieb</translation>
    </message>
    <message>
        <source>Mixed: %1</source>
        <translation>Angemischt: %1</translation>
    </message>
    <message>
        <source>Weighed: %1</source>
        <translation>Gewogen: %1</translation>
    </message>
    <message>
        <source>Mix is stiff: %1</source>
        <translation>Ansatz ist steif: %1</translation>
    </message>
    <message>
        <source>Mix is used up: %1</source>
        <translation>Ansatz ist verbraucht: %1</translation>
    </message>
    <message>
        <source>Mix is thrown away: %1</source>
        <translation>Ansatz ist weggeworfen: %1</translation>
    </message>
    <message>
        <source>Work stopped</source>
        <translation>Arbeit ruht</translation>
    </message>
    <message>
        <source>Work goes on</source>
        <translation>Arbeit geht weiter</translation>
    </message>
    <message>
        <source>Follows the new revision</source>
        <translation>Folgt der neuen Fassung</translation>
    </message>
    <message>
        <source>Handed over</source>
        <translation>Ausgegeben</translation>
    </message>
    <message>
        <source>Went back unmended</source>
        <translation>Ging unrestauriert zurück</translation>
    </message>
    <message>
        <source>Agreed and taken in</source>
        <translation>Vereinbart und angenommen</translation>
    </message>
    <message>
        <source>Lifted or turned</source>
        <translation>Angehoben oder gewendet</translation>
    </message>
    <message>
        <source>Waits for its owner</source>
        <translation>Wartet auf den Eigentümer</translation>
    </message>
    <message>
        <source>Its owner answered</source>
        <translation>Der Eigentümer hat geantwortet</translation>
    </message>
    <message>
        <source>Hands on it</source>
        <translation>Bin dran</translation>
    </message>
    <message>
        <source>Away</source>
        <translation>Weg</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>The clock was set</source>
        <translation>Die Uhr wurde gestellt</translation>
    </message>
    <message>
        <source>Taken back</source>
        <translation>Zurückgenommen</translation>
    </message>
    <message>
        <source>Told differently</source>
        <translation>Anders eingetragen</translation>
    </message>
    <message>
        <source>opens %1 instead of %2</source>
        <translation>öffnet %1 statt %2</translation>
    </message>
    <message>
        <source>opens %1</source>
        <translation>öffnet %1</translation>
    </message>
    <message>
        <source>no longer opens %1</source>
        <translation>öffnet nicht mehr %1</translation>
    </message>
    <message>
        <source>start by %1 instead of %2</source>
        <translation>beginnen bis %1 statt %2</translation>
    </message>
    <message>
        <source>start by %1</source>
        <translation>beginnen bis %1</translation>
    </message>
    <message>
        <source>no longer to be started by %1</source>
        <translation>nicht mehr bis %1 zu beginnen</translation>
    </message>
    <message>
        <source>closes %1 instead of %2</source>
        <translation>schließt %1 statt %2</translation>
    </message>
    <message>
        <source>closes %1</source>
        <translation>schließt %1</translation>
    </message>
    <message>
        <source>no longer closes %1</source>
        <translation>schließt nicht mehr %1</translation>
    </message>
    <message>
        <source>Put in: %1</source>
        <translation>Gelegt: %1</translation>
    </message>
    <message>
        <source>Note: %1</source>
        <translation>Notiz: %1</translation>
    </message>
    <message>
        <source>%1 is at the bench</source>
        <translation>%1 ist am Werktisch</translation>
    </message>
    <message>
        <source>At the bench</source>
        <translation>Am Werktisch</translation>
    </message>
    <message>
        <source>Told</source>
        <translation>Eingetragen</translation>
    </message>
    <message>
        <source>%1: “%2”</source>
        <translation>%1: „%2“</translation>
    </message>
    <message>
        <source>takes %1 of hands</source>
        <translation>braucht %1 Handarbeit</translation>
    </message>
    <message>
        <source>no longer stands</source>
        <translation>gilt nicht mehr</translation>
    </message>
    <message>
        <source>comes up</source>
        <translation>kommt dazu</translation>
    </message>
    <message>
        <source>comes up: %1</source>
        <translation>kommt dazu: %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
</context>
<context>
    <name>TopLineWords</name>
    <message>
        <source>Undo</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>no reading</source>
        <translation>keine Messung</translation>
    </message>
    <message>
        <source>reading too old</source>
        <translation>Messung zu alt</translation>
    </message>
    <message>
        <source>%1 of %2 slots</source>
        <translation>%1 von %2 Plätzen</translation>
    </message>
    <message>
        <source>stiff by now</source>
        <translation>inzwischen steif</translation>
    </message>
    <message>
        <source>%1 left</source>
        <translation>noch %1</translation>
    </message>
    <message>
        <source>on nothing yet</source>
        <translation>noch auf nichts</translation>
    </message>
    <message>
        <source>1 piece</source>
        <translation>1 Stück</translation>
    </message>
    <message numerus="yes">
        <source>%n pieces</source>
        <translation>
            <numerusform>%n Stück</numerusform>
            <numerusform>%n Stücke</numerusform>
        </translation>
    </message>
    <message>
        <source>%1, %2 old, %3</source>
        <translation>%1, %2 alt, %3</translation>
    </message>
    <message>
        <source>sound on</source>
        <translation>Ton an</translation>
    </message>
    <message>
        <source>sound paused %1</source>
        <translation>Ton ruht %1</translation>
    </message>
    <message>
        <source>sound paused</source>
        <translation>Ton ruht</translation>
    </message>
    <message>
        <source>sound off</source>
        <translation>Ton aus</translation>
    </message>
    <message>
        <source>no sound here</source>
        <translation>kein Ton hier</translation>
    </message>
    <message>
        <source>nobody at the bench</source>
        <translation>niemand am Werktisch</translation>
    </message>
    <message>
        <source>free</source>
        <translation>frei</translation>
    </message>
    <message>
        <source>free until %1</source>
        <translation>frei bis %1</translation>
    </message>
    <message>
        <source>not free</source>
        <translation>nicht frei</translation>
    </message>
    <message>
        <source>%1, away</source>
        <translation>%1, weg</translation>
    </message>
    <message>
        <source>next %1</source>
        <translation>nächster %1</translation>
    </message>
    <message>
        <source>none ahead</source>
        <translation>keiner in Sicht</translation>
    </message>
    <message>
        <source>more</source>
        <translation>mehr</translation>
    </message>
    <message>
        <source>all places</source>
        <translation>alle Orte</translation>
    </message>
</context>
<context>
    <name>WhileAwayWords</name>
    <message>
        <source>%1 left</source>
        <translation>noch %1</translation>
    </message>
    <message>
        <source>may be done since %1</source>
        <translation>möglich seit %1</translation>
    </message>
    <message>
        <source>under hands since %1</source>
        <translation>in Arbeit seit %1</translation>
    </message>
    <message>
        <source>closed %1 ago</source>
        <translation>zu seit %1</translation>
    </message>
</context>
<context>
    <name>WhyWords</name>
    <message>
        <source>read</source>
        <translation>gemessen</translation>
    </message>
    <message>
        <source>reading too old: 3 °C to the safe side</source>
        <translation>Messung zu alt: 3 °C zur sicheren Seite</translation>
    </message>
    <message>
        <source>no reading: the rule&apos;s own temperature</source>
        <translation>keine Messung: die Temperatur der Regel</translation>
    </message>
    <message>
        <source>slow end of the published band</source>
        <translation>langsames Ende der veröffentlichten Spanne</translation>
    </message>
    <message>
        <source>middle of the published band</source>
        <translation>Mitte der veröffentlichten Spanne</translation>
    </message>
    <message>
        <source>fast end of the published band</source>
        <translation>schnelles Ende der veröffentlichten Spanne</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>%1 at %2: %3</source>
        <translation>%1 bei %2: %3</translation>
    </message>
    <message>
        <source>Warmth hastens it by the Arrhenius law, %1</source>
        <translation>Wärme beschleunigt es nach Arrhenius, %1</translation>
    </message>
    <message>
        <source>It goes on only in warm, damp air</source>
        <translation>Es geht nur in warmer, feuchter Luft voran</translation>
    </message>
    <message>
        <source>It goes by the clock</source>
        <translation>Es geht nach der Uhr</translation>
    </message>
    <message>
        <source>, %1</source>
        <translation>, %1</translation>
    </message>
    <message>
        <source>From %1: %2%3, %4</source>
        <translation>Ab %1: %2%3, %4</translation>
    </message>
    <message>
        <source>So: %1</source>
        <translation>Also: %1</translation>
    </message>
    <message>
        <source>So: stalled, no time to give</source>
        <translation>Also: stockt, keine Zeit zu nennen</translation>
    </message>
    <message>
        <source>Opens: counted from %1 (fact %2)</source>
        <translation>Öffnet: gezählt ab %1 (Eintragung %2)</translation>
    </message>
    <message>
        <source>Opens at the latest: counted from %1 (fact %2)</source>
        <translation>Öffnet spätestens: gezählt ab %1 (Eintragung %2)</translation>
    </message>
    <message>
        <source>Best from: counted from %1 (fact %2)</source>
        <translation>Am besten ab: gezählt ab %1 (Eintragung %2)</translation>
    </message>
    <message>
        <source>Closes: counted from %1 (fact %2)</source>
        <translation>Schließt: gezählt ab %1 (Eintragung %2)</translation>
    </message>
    <message>
        <source>Lost: counted from %1 (fact %2)</source>
        <translation>Verloren: gezählt ab %1 (Eintragung %2)</translation>
    </message>
</context>
<context>
    <name>Wipe</name>
    <message>
        <source>The glass may be wiped: touch does nothing</source>
        <translation>Das Glas darf geputzt werden: Berühren tut nichts</translation>
    </message>
</context>
<context>
    <name>Wording</name>
    <message>
        <source>%1 h %2</source>
        <translation>%1 h %2</translation>
    </message>
    <message>
        <source>%1 d %2 h</source>
        <translation>%1 d %2 h</translation>
    </message>
    <message>
        <source>%1 s</source>
        <translation>%1 s</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
    <message>
        <source>%1 h</source>
        <translation>%1 h</translation>
    </message>
    <message>
        <source>1 day</source>
        <translation>1 Tag</translation>
    </message>
    <message numerus="yes">
        <source>%n days</source>
        <translation>
            <numerusform>%n Tag</numerusform>
            <numerusform>%n Tage</numerusform>
        </translation>
    </message>
    <message>
        <source>%1 %2 h</source>
        <translation>%1 %2 h</translation>
    </message>
    <message>
        <source>about %1 to %2</source>
        <translation>etwa %1 bis %2</translation>
    </message>
    <message>
        <source>just now</source>
        <translation>gerade eben</translation>
    </message>
    <message>
        <source>%1 ago</source>
        <translation>vor %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 °F</source>
        <translation>%1 °F</translation>
    </message>
    <message>
        <source>%1 °C</source>
        <translation>%1 °C</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>a miss costs minutes</source>
        <translation>Versäumen kostet Minuten</translation>
    </message>
    <message>
        <source>a miss costs a fresh mix</source>
        <translation>Versäumen kostet einen neuen Ansatz</translation>
    </message>
    <message>
        <source>a miss costs an afternoon</source>
        <translation>Versäumen kostet einen Nachmittag</translation>
    </message>
    <message>
        <source>a miss costs a day</source>
        <translation>Versäumen kostet einen Tag</translation>
    </message>
    <message>
        <source>a miss costs the piece</source>
        <translation>Versäumen kostet das Stück</translation>
    </message>
</context>
<context>
    <name>mend::app::Alarm</name>
    <message>
        <source>A window is open on the bench</source>
        <translation>Am Werktisch ist ein Zeitfenster offen</translation>
    </message>
</context>
<context>
    <name>mend::app::BenchLink</name>
    <message>
        <source>%1: %2, start by %3</source>
        <translation>%1: %2, beginnen bis %3</translation>
    </message>
    <message>
        <source>Heard</source>
        <translation>Gehört</translation>
    </message>
    <message>
        <source>After this step</source>
        <translation>Nach diesem Schritt</translation>
    </message>
    <message>
        <source>In time to start at %1</source>
        <translation>Rechtzeitig zum Beginn um %1</translation>
    </message>
</context>
<context>
    <name>mend::app::BenchSpace</name>
    <message>
        <source>Top line</source>
        <translation>Kopfzeile</translation>
    </message>
    <message>
        <source>The next hours of all pieces, and mixing</source>
        <translation>Die nächsten Stunden aller Stücke, und Anmischen</translation>
    </message>
    <message>
        <source>Do this now</source>
        <translation>Das jetzt tun</translation>
    </message>
    <message>
        <source>Pieces on the bench</source>
        <translation>Stücke am Werktisch</translation>
    </message>
    <message>
        <source>Wipe the glass</source>
        <translation>Glas putzen</translation>
    </message>
</context>
<context>
    <name>mend::app::CardField</name>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>Card before</source>
        <translation>Karte davor</translation>
    </message>
    <message>
        <source>Mixing now</source>
        <translation>Ich mische an</translation>
    </message>
    <message>
        <source>Next card</source>
        <translation>Nächste Karte</translation>
    </message>
</context>
<context>
    <name>mend::app::DayLogSpace</name>
    <message>
        <source>The day&apos;s log</source>
        <translation>Das Tagebuch</translation>
    </message>
    <message>
        <source>One fact</source>
        <translation>Eine Eintragung</translation>
    </message>
    <message>
        <source>taken back</source>
        <translation>zurückgenommen</translation>
    </message>
    <message>
        <source>told differently</source>
        <translation>anders eingetragen</translation>
    </message>
    <message>
        <source>Log</source>
        <translation>Tagebuch</translation>
    </message>
    <message>
        <source>The day before</source>
        <translation>Der Tag davor</translation>
    </message>
    <message>
        <source>The day after</source>
        <translation>Der Tag danach</translation>
    </message>
    <message>
        <source>Nothing was told on this day. Every tap on the Bench becomes a line here.</source>
        <translation>An diesem Tag wurde nichts eingetragen. Jedes Tippen am Werktisch wird hier zu einer Zeile.</translation>
    </message>
    <message>
        <source>%1 (taken back)</source>
        <translation>%1 (zurückgenommen)</translation>
    </message>
    <message>
        <source>What was told</source>
        <translation>Was eingetragen wurde</translation>
    </message>
    <message>
        <source>Choose a line to see it whole, to move it to another time or piece, or to take it back.</source>
        <translation>Wählen Sie eine Zeile, um sie ganz zu sehen, sie auf eine andere Zeit oder ein anderes Stück zu verlegen oder zurückzunehmen.</translation>
    </message>
    <message>
        <source>It cannot be moved, but taken back and told anew.</source>
        <translation>Verlegen lässt es sich nicht, aber zurücknehmen und neu eintragen.</translation>
    </message>
    <message>
        <source>More than a day ago: it stands as it was told.</source>
        <translation>Mehr als einen Tag her: es bleibt, wie es eingetragen wurde.</translation>
    </message>
    <message>
        <source>Or was it told by mistake?</source>
        <translation>Oder war es ein Versehen?</translation>
    </message>
    <message>
        <source>It did not happen</source>
        <translation>Es ist nicht geschehen</translation>
    </message>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Happened</source>
        <translation>Geschehen</translation>
    </message>
    <message>
        <source>Told</source>
        <translation>Eingetragen</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Durch</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>It was taken back: nothing on the bench counts from it.</source>
        <translation>Es ist zurückgenommen: nichts am Werktisch zählt von hier.</translation>
    </message>
    <message>
        <source>When was it really?</source>
        <translation>Wann war es wirklich?</translation>
    </message>
    <message>
        <source>15 min sooner</source>
        <translation>15 min früher</translation>
    </message>
    <message>
        <source>5 min sooner</source>
        <translation>5 min früher</translation>
    </message>
    <message>
        <source>1 min sooner</source>
        <translation>1 min früher</translation>
    </message>
    <message>
        <source>1 min later</source>
        <translation>1 min später</translation>
    </message>
    <message>
        <source>5 min later</source>
        <translation>5 min später</translation>
    </message>
    <message>
        <source>15 min later</source>
        <translation>15 min später</translation>
    </message>
    <message>
        <source>still to come</source>
        <translation>kommt erst noch</translation>
    </message>
    <message>
        <source>Or by the clock, such as 13:29</source>
        <translation>Oder nach der Uhr, etwa 13:29</translation>
    </message>
    <message>
        <source>A time of the last day is needed, not one to come.</source>
        <translation>Eine Zeit des letzten Tages, keine, die noch kommt.</translation>
    </message>
    <message>
        <source>Which piece was it?</source>
        <translation>Welches Stück war es?</translation>
    </message>
    <message>
        <source>If it is kept so</source>
        <translation>Wenn es so bleibt</translation>
    </message>
    <message>
        <source>No window moves.</source>
        <translation>Kein Zeitfenster verschiebt sich.</translation>
    </message>
    <message>
        <source>It was at %1</source>
        <translation>Es war um %1</translation>
    </message>
    <message>
        <source>It was the %1, at %2</source>
        <translation>Es war %1, um %2</translation>
    </message>
    <message>
        <source>Leave it as told</source>
        <translation>Lassen, wie eingetragen</translation>
    </message>
    <message>
        <source>If it did not happen</source>
        <translation>Wenn es nicht geschehen ist</translation>
    </message>
    <message>
        <source>These were told on top of it and go with it:</source>
        <translation>Diese bauen darauf auf und gehen mit:</translation>
    </message>
    <message>
        <source>Why, if you like</source>
        <translation>Warum, wenn Sie mögen</translation>
    </message>
    <message>
        <source>Take it back</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>Take all of it back</source>
        <translation>Alles zurücknehmen</translation>
    </message>
    <message>
        <source>For the wall</source>
        <translation>Für die Wand</translation>
    </message>
    <message>
        <source>Every card of the Bench with its clock times, to be hung up. No owners stand on it.</source>
        <translation>Jede Karte des Werktischs mit ihren Uhrzeiten, zum Aufhängen. Eigentümer stehen nicht darauf.</translation>
    </message>
    <message>
        <source>Write the list as PDF</source>
        <translation>Die Liste als PDF schreiben</translation>
    </message>
</context>
<context>
    <name>mend::app::DoorLink</name>
    <message>
        <source>Find</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>Intake</source>
        <translation>Annahme</translation>
    </message>
</context>
<context>
    <name>mend::app::Filed</name>
    <message>
        <source>being made</source>
        <translation>wird gerade angelegt</translation>
    </message>
</context>
<context>
    <name>mend::app::FindLink</name>
    <message>
        <source>%1 is no piece number: one digit is wrong, or two are swapped.</source>
        <translation>%1 ist keine Stücknummer: eine Ziffer ist falsch, oder zwei sind vertauscht.</translation>
    </message>
    <message>
        <source>1 piece in the house</source>
        <translation>1 Stück im Haus</translation>
    </message>
    <message>
        <source>no longer in the house</source>
        <translation>nicht mehr im Haus</translation>
    </message>
    <message>
        <source>The file does not answer just now: try again in a moment.</source>
        <translation>Die Datei antwortet gerade nicht: versuchen Sie es gleich noch einmal.</translation>
    </message>
    <message>
        <source>%1 These are near it:</source>
        <translation>%1 Diese kommen ihr nahe:</translation>
    </message>
    <message>
        <source>No piece in this file has the number %1.</source>
        <translation>Kein Stück in dieser Datei hat die Nummer %1.</translation>
    </message>
    <message>
        <source>1 fragment came in</source>
        <translation>1 Scherbe eingegangen</translation>
    </message>
    <message>
        <source>Promised for %1, but it may not be collected before %2.</source>
        <translation>Zugesagt für %1, abgeholt werden darf es aber nicht vor %2.</translation>
    </message>
    <message>
        <source>Its %1 waits so long. Call the owner.</source>
        <translation>%1 braucht so lange. Rufen Sie den Eigentümer an.</translation>
    </message>
    <message>
        <source>The work takes so long. Call the owner.</source>
        <translation>Die Arbeit dauert so lange. Rufen Sie den Eigentümer an.</translation>
    </message>
    <message>
        <source>not yet: it still waits</source>
        <translation>noch nicht: es wartet noch</translation>
    </message>
    <message>
        <source>not yet: work is to do</source>
        <translation>noch nicht: es ist noch Arbeit daran</translation>
    </message>
    <message>
        <source>Mended by</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>Came in</source>
        <translation>Eingegangen</translation>
    </message>
    <message>
        <source>Handed over</source>
        <translation>Ausgegeben</translation>
    </message>
    <message>
        <source>Went back unmended</source>
        <translation>Ging unrestauriert zurück</translation>
    </message>
    <message>
        <source>Promised for</source>
        <translation>Zugesagt für</translation>
    </message>
    <message>
        <source>no day</source>
        <translation>kein Tag</translation>
    </message>
    <message>
        <source>May be collected from</source>
        <translation>Abholbar ab</translation>
    </message>
    <message>
        <source>Owed</source>
        <translation>Offen</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>Agreed price</source>
        <translation>Vereinbarter Preis</translation>
    </message>
    <message numerus="yes">
        <source>%n pieces in the house</source>
        <translation>
            <numerusform>%n Stück im Haus</numerusform>
            <numerusform>%n Stücke im Haus</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n fragments came in</source>
        <translation>
            <numerusform>%n Scherbe eingegangen</numerusform>
            <numerusform>%n Scherben eingegangen</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>mend::app::FindSpace</name>
    <message>
        <source>Tap a piece to see when it may go and what is owed.</source>
        <translation>Tippen Sie ein Stück an, um zu sehen, wann es gehen darf und was offen ist.</translation>
    </message>
    <message>
        <source>Back to the list</source>
        <translation>Zurück zur Liste</translation>
    </message>
    <message>
        <source>Open piece</source>
        <translation>Stück öffnen</translation>
    </message>
    <message>
        <source>Hand over</source>
        <translation>Ausgeben</translation>
    </message>
    <message>
        <source>Find</source>
        <translation>Suchen</translation>
    </message>
    <message>
        <source>What was found</source>
        <translation>Was sich fand</translation>
    </message>
    <message>
        <source>Show owners</source>
        <translation>Eigentümer zeigen</translation>
    </message>
    <message>
        <source>Hide owners</source>
        <translation>Eigentümer verbergen</translation>
    </message>
    <message>
        <source>Nothing may be collected, nothing is late, nothing waits for its owner.</source>
        <translation>Nichts kann abgeholt werden, nichts ist überfällig, nichts wartet auf seinen Eigentümer.</translation>
    </message>
    <message>
        <source>Clear</source>
        <translation>Leeren</translation>
    </message>
    <message>
        <source>Pieces of %1</source>
        <translation>Stücke von %1</translation>
    </message>
    <message>
        <source>Nothing like that. Fewer words find more; so does the owner&apos;s phone.</source>
        <translation>Nichts dergleichen. Weniger Wörter finden mehr, ebenso das Telefon des Eigentümers.</translation>
    </message>
    <message>
        <source>And more: one more word brings fewer.</source>
        <translation>Und mehr: ein Wort mehr bringt weniger.</translation>
    </message>
    <message>
        <source>People</source>
        <translation>Leute</translation>
    </message>
    <message>
        <source>Number, name, phone, looks</source>
        <translation>Nummer, Name, Telefon, Aussehen</translation>
    </message>
</context>
<context>
    <name>mend::app::HandOverSpace</name>
    <message>
        <source>What goes out</source>
        <translation>Was hinausgeht</translation>
    </message>
    <message>
        <source>Who takes it</source>
        <translation>Wer es mitnimmt</translation>
    </message>
    <message>
        <source>Count the fragments.</source>
        <translation>Zählen Sie die Scherben.</translation>
    </message>
    <message>
        <source>Tick what came with it.</source>
        <translation>Haken Sie ab, was dabei war.</translation>
    </message>
    <message>
        <source>Say what becomes of that which is missing.</source>
        <translation>Sagen Sie, was aus dem Fehlenden wird.</translation>
    </message>
    <message>
        <source>Say why it goes back unmended.</source>
        <translation>Sagen Sie, warum es unrestauriert zurückgeht.</translation>
    </message>
    <message>
        <source>Say why it goes before its wait is over.</source>
        <translation>Sagen Sie, warum es vor Ende der Wartezeit geht.</translation>
    </message>
    <message>
        <source>Say what becomes of the money that is owed.</source>
        <translation>Sagen Sie, was aus dem offenen Betrag wird.</translation>
    </message>
    <message>
        <source>Say who takes it.</source>
        <translation>Sagen Sie, wer es mitnimmt.</translation>
    </message>
    <message>
        <source>Have it signed for.</source>
        <translation>Lassen Sie den Empfang unterschreiben.</translation>
    </message>
    <message>
        <source>Hand-over</source>
        <translation>Ausgabe</translation>
    </message>
    <message>
        <source>Hand over: %1</source>
        <translation>Ausgeben: %1</translation>
    </message>
    <message>
        <source>Then: who takes it</source>
        <translation>Dann: wer es mitnimmt</translation>
    </message>
    <message>
        <source>as it came</source>
        <translation>wie es kam</translation>
    </message>
    <message>
        <source>as it goes</source>
        <translation>wie es geht</translation>
    </message>
    <message>
        <source>Whose it is</source>
        <translation>Wem es gehört</translation>
    </message>
    <message>
        <source>erased at their wish</source>
        <translation>auf ihren Wunsch gelöscht</translation>
    </message>
    <message>
        <source>May be collected.</source>
        <translation>Kann abgeholt werden.</translation>
    </message>
    <message>
        <source>May be collected from %1.</source>
        <translation>Abholbar ab %1.</translation>
    </message>
    <message>
        <source>1 fragment came in</source>
        <translation>1 Scherbe eingegangen</translation>
    </message>
    <message>
        <source>%1 fragments came in</source>
        <translation>%1 Scherben eingegangen</translation>
    </message>
    <message>
        <source>All of them go out</source>
        <translation>Alle gehen hinaus</translation>
    </message>
    <message>
        <source>joined or in the bag</source>
        <translation>geklebt oder im Beutel</translation>
    </message>
    <message>
        <source>Or so many</source>
        <translation>Oder so viele</translation>
    </message>
    <message>
        <source>fragments</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>A whole number from 0 to %1.</source>
        <translation>Eine ganze Zahl von 0 bis %1.</translation>
    </message>
    <message>
        <source>More go out than came in: is a fragment of another piece among them?</source>
        <translation>Es gehen mehr hinaus, als kamen: ist eine Scherbe eines anderen Stücks darunter?</translation>
    </message>
    <message>
        <source>What came with it</source>
        <translation>Was dabei war</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>goes out</source>
        <translation>geht hinaus</translation>
    </message>
    <message>
        <source>tap when it is there</source>
        <translation>antippen, wenn es da ist</translation>
    </message>
    <message>
        <source>None of it is here</source>
        <translation>Nichts davon ist hier</translation>
    </message>
    <message>
        <source>1 fragment is missing</source>
        <translation>1 Scherbe fehlt</translation>
    </message>
    <message>
        <source>%1 fragments are missing</source>
        <translation>%1 Scherben fehlen</translation>
    </message>
    <message>
        <source>1 thing that came with it is missing</source>
        <translation>1 Zubehörteil fehlt</translation>
    </message>
    <message>
        <source>%1 things that came with it are missing</source>
        <translation>%1 Zubehörteile fehlen</translation>
    </message>
    <message>
        <source>What becomes of it</source>
        <translation>Was daraus wird</translation>
    </message>
    <message>
        <source>It stays here and is looked for</source>
        <translation>Es bleibt hier und wird gesucht</translation>
    </message>
    <message>
        <source>The owner knows that it is lost</source>
        <translation>Der Eigentümer weiß, dass es verloren ist</translation>
    </message>
    <message>
        <source>A fill took its place</source>
        <translation>Eine Ergänzung trat an seine Stelle</translation>
    </message>
    <message>
        <source>Or in your own words</source>
        <translation>Oder in eigenen Worten</translation>
    </message>
    <message>
        <source>Not now</source>
        <translation>Jetzt nicht</translation>
    </message>
    <message>
        <source>Work on it is still to do. It can only go back unmended.</source>
        <translation>Es ist noch Arbeit daran. Es kann nur unrestauriert zurückgehen.</translation>
    </message>
    <message>
        <source>Because</source>
        <translation>Weil</translation>
    </message>
    <message>
        <source>The owner wants it back</source>
        <translation>Der Eigentümer will es zurück</translation>
    </message>
    <message>
        <source>It cannot be mended</source>
        <translation>Es lässt sich nicht restaurieren</translation>
    </message>
    <message>
        <source>No price was agreed</source>
        <translation>Kein Preis wurde vereinbart</translation>
    </message>
    <message>
        <source>its wait is over</source>
        <translation>die Wartezeit ist vorbei</translation>
    </message>
    <message>
        <source>Not before %1.</source>
        <translation>Nicht vor %1.</translation>
    </message>
    <message>
        <source>Not before %1: its %2 wants that long.</source>
        <translation>Nicht vor %1: %2 braucht so lange.</translation>
    </message>
    <message>
        <source>It goes all the same, because</source>
        <translation>Es geht trotzdem, weil</translation>
    </message>
    <message>
        <source>The owner lets it stand untouched until then</source>
        <translation>Der Eigentümer lässt es bis dahin unberührt stehen</translation>
    </message>
    <message>
        <source>It is only to be looked at</source>
        <translation>Es ist nur zum Ansehen</translation>
    </message>
    <message>
        <source>Paid: %1. Nothing is owed.</source>
        <translation>Bezahlt: %1. Nichts ist offen.</translation>
    </message>
    <message>
        <source>%1 of %2 is owed.</source>
        <translation>%1 von %2 ist offen.</translation>
    </message>
    <message>
        <source>The rest is paid later</source>
        <translation>Der Rest wird später bezahlt</translation>
    </message>
    <message>
        <source>Paid now</source>
        <translation>Jetzt bezahlt</translation>
    </message>
    <message>
        <source>Stays owed</source>
        <translation>Bleibt offen</translation>
    </message>
    <message>
        <source>The owner takes it</source>
        <translation>Der Eigentümer nimmt es mit</translation>
    </message>
    <message>
        <source>Or somebody else: their name</source>
        <translation>Oder jemand anderes: der Name</translation>
    </message>
    <message>
        <source>Who takes it?</source>
        <translation>Wer nimmt es mit?</translation>
    </message>
    <message>
        <source>Signed on paper</source>
        <translation>Auf Papier unterschrieben</translation>
    </message>
    <message>
        <source>Sign again</source>
        <translation>Neu unterschreiben</translation>
    </message>
    <message>
        <source>Given back unmended</source>
        <translation>Unrestauriert zurückgegeben</translation>
    </message>
    <message>
        <source>Handed over</source>
        <translation>Ausgegeben</translation>
    </message>
    <message>
        <source>stands in the file</source>
        <translation>steht in der Datei</translation>
    </message>
    <message>
        <source>not stored yet</source>
        <translation>noch nicht gespeichert</translation>
    </message>
    <message>
        <source>Take it back</source>
        <translation>Zurücknehmen</translation>
    </message>
    <message>
        <source>for ten seconds</source>
        <translation>zehn Sekunden lang</translation>
    </message>
    <message>
        <source>What goes with it on paper</source>
        <translation>Was auf Papier mitgeht</translation>
    </message>
    <message>
        <source>Write them all</source>
        <translation>Alle schreiben</translation>
    </message>
    <message>
        <source>Write it</source>
        <translation>Schreiben</translation>
    </message>
    <message>
        <source>Back to the bench</source>
        <translation>Zurück zum Werktisch</translation>
    </message>
</context>
<context>
    <name>mend::app::IntakeLink</name>
    <message>
        <source>It is not in the file: %1. The page stays; try again.</source>
        <translation>Es steht nicht in der Datei: %1. Das Blatt bleibt; versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>An old mend, of what is unknown</source>
        <translation>Alte Restaurierung, Material unbekannt</translation>
    </message>
    <message>
        <source>Epoxy</source>
        <translation>Epoxidharz</translation>
    </message>
    <message>
        <source>Acrylic resin</source>
        <translation>Acrylharz</translation>
    </message>
    <message>
        <source>Urushi</source>
        <translation>Urushi</translation>
    </message>
    <message>
        <source>Plaster</source>
        <translation>Gips</translation>
    </message>
    <message>
        <source>Wax or tape</source>
        <translation>Wachs oder Klebeband</translation>
    </message>
</context>
<context>
    <name>mend::app::IntakeSpace</name>
    <message>
        <source>Can be undone</source>
        <translation>Wieder lösbar</translation>
    </message>
    <message>
        <source>Need not be undone</source>
        <translation>Muss nicht lösbar sein</translation>
    </message>
    <message>
        <source>May show</source>
        <translation>Darf sichtbar sein</translation>
    </message>
    <message>
        <source>Should not show</source>
        <translation>Soll unsichtbar sein</translation>
    </message>
    <message>
        <source>Metal on it</source>
        <translation>Metall darauf</translation>
    </message>
    <message>
        <source>No metal</source>
        <translation>Kein Metall</translation>
    </message>
    <message>
        <source>Not for food</source>
        <translation>Nicht für Speisen</translation>
    </message>
    <message>
        <source>Food not spoken of</source>
        <translation>Speisen nicht besprochen</translation>
    </message>
    <message>
        <source>Hidden damage told</source>
        <translation>Verborgene Schäden besprochen</translation>
    </message>
    <message>
        <source>Hidden damage untold</source>
        <translation>Verborgene Schäden nicht besprochen</translation>
    </message>
    <message>
        <source>Pictures may be shown</source>
        <translation>Bilder dürfen gezeigt werden</translation>
    </message>
    <message>
        <source>Pictures kept here</source>
        <translation>Bilder bleiben hier</translation>
    </message>
    <message>
        <source>Intake</source>
        <translation>Annahme</translation>
    </message>
    <message>
        <source>What is taken in</source>
        <translation>Was angenommen wird</translation>
    </message>
    <message>
        <source>This page was left half filled; it goes on where you stopped.</source>
        <translation>Dieses Blatt blieb halb ausgefüllt; es geht weiter, wo Sie aufgehört haben.</translation>
    </message>
    <message>
        <source>%1 is taken in as %2.</source>
        <translation>%1 ist als %2 angenommen.</translation>
    </message>
    <message>
        <source>Taken in</source>
        <translation>Angenommen</translation>
    </message>
    <message>
        <source>Tag and papers</source>
        <translation>Anhänger und Papiere</translation>
    </message>
    <message>
        <source>To the bench</source>
        <translation>Zum Werktisch</translation>
    </message>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Of</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>Fragments</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>With it</source>
        <translation>Dabei</translation>
    </message>
    <message>
        <source>Promised for</source>
        <translation>Zugesagt für</translation>
    </message>
    <message>
        <source>On the bench</source>
        <translation>Auf den Werktisch</translation>
    </message>
    <message>
        <source>agreed and signed</source>
        <translation>vereinbart und unterschrieben</translation>
    </message>
    <message>
        <source>Only received</source>
        <translation>Nur eingegangen</translation>
    </message>
    <message>
        <source>agreed later</source>
        <translation>Vereinbarung folgt</translation>
    </message>
    <message>
        <source>Keep the page</source>
        <translation>Blatt behalten</translation>
    </message>
    <message>
        <source>Empty it</source>
        <translation>Leeren</translation>
    </message>
    <message>
        <source>Empty the page</source>
        <translation>Blatt leeren</translation>
    </message>
    <message>
        <source>What is agreed</source>
        <translation>Was vereinbart ist</translation>
    </message>
    <message>
        <source>I ask the studio to mend my piece as said above. Damage that cannot be seen now may come to light, and a mended piece is not for food or drink. What is ticked below holds.</source>
        <translation>Ich beauftrage das Atelier, mein Stück wie oben gesagt zu restaurieren. Schäden, die jetzt nicht zu sehen sind, können zutage treten, und ein restauriertes Stück ist nicht für Speisen und Getränke. Was unten gewählt ist, gilt.</translation>
    </message>
    <message>
        <source>Tap to change</source>
        <translation>Zum Ändern antippen</translation>
    </message>
    <message>
        <source>Signed here by the owner:</source>
        <translation>Hier vom Eigentümer unterschrieben:</translation>
    </message>
    <message>
        <source>Signed on paper</source>
        <translation>Auf Papier unterschrieben</translation>
    </message>
    <message>
        <source>Sign anew</source>
        <translation>Neu unterschreiben</translation>
    </message>
    <message>
        <source>from top to bottom; the rest can follow</source>
        <translation>von oben nach unten; der Rest kann folgen</translation>
    </message>
    <message>
        <source>Whose it is</source>
        <translation>Wem es gehört</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Phone, mail or address</source>
        <translation>Telefon, E-Mail oder Anschrift</translation>
    </message>
    <message>
        <source>Known already: the piece goes to the same person.</source>
        <translation>Schon bekannt: das Stück kommt zur selben Person.</translation>
    </message>
    <message>
        <source>Was it somebody of these?</source>
        <translation>War es jemand von diesen?</translation>
    </message>
    <message>
        <source>None of them</source>
        <translation>Niemand davon</translation>
    </message>
    <message>
        <source>somebody new</source>
        <translation>jemand Neues</translation>
    </message>
    <message>
        <source>Does one of their pieces come back?</source>
        <translation>Kommt eines ihrer Stücke zurück?</translation>
    </message>
    <message>
        <source>Why it is here again</source>
        <translation>Warum es wieder hier ist</translation>
    </message>
    <message>
        <source>A join gave way</source>
        <translation>Eine Klebung hat nachgegeben</translation>
    </message>
    <message>
        <source>Broken anew</source>
        <translation>Neu zerbrochen</translation>
    </message>
    <message>
        <source>A fragment was found</source>
        <translation>Eine Scherbe fand sich</translation>
    </message>
    <message>
        <source>Something else</source>
        <translation>Etwas anderes</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>Called at the bench, such as “Heron bowl”</source>
        <translation>Name am Werktisch, etwa „Reiherschale“</translation>
    </message>
    <message>
        <source>What it looks like</source>
        <translation>Wie es aussieht</translation>
    </message>
    <message>
        <source>It sounds like “%1” in the house: a word more tells them apart by ear.</source>
        <translation>Es klingt wie „%1“ im Haus: ein Wort mehr, und man hört den Unterschied.</translation>
    </message>
    <message>
        <source>Keep both names</source>
        <translation>Beide Namen behalten</translation>
    </message>
    <message>
        <source>or another count</source>
        <translation>oder eine andere Zahl</translation>
    </message>
    <message>
        <source>fragments</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>Fragments, counted</source>
        <translation>Scherben, gezählt</translation>
    </message>
    <message>
        <source>What came with it</source>
        <translation>Was dabei war</translation>
    </message>
    <message>
        <source>Lid</source>
        <translation>Deckel</translation>
    </message>
    <message>
        <source>lid</source>
        <translation>Deckel</translation>
    </message>
    <message>
        <source>Stand</source>
        <translation>Ständer</translation>
    </message>
    <message>
        <source>stand</source>
        <translation>Ständer</translation>
    </message>
    <message>
        <source>Box</source>
        <translation>Kasten</translation>
    </message>
    <message>
        <source>box</source>
        <translation>Kasten</translation>
    </message>
    <message>
        <source>Bag of crumbs</source>
        <translation>Tüte mit Krümeln</translation>
    </message>
    <message>
        <source>bag of crumbs</source>
        <translation>Tüte mit Krümeln</translation>
    </message>
    <message>
        <source>How it will be mended</source>
        <translation>Wie es restauriert wird</translation>
    </message>
    <message>
        <source>Less</source>
        <translation>Weniger</translation>
    </message>
    <message>
        <source>More about it</source>
        <translation>Mehr dazu</translation>
    </message>
    <message>
        <source>What is seen: cracks, losses, old mends</source>
        <translation>Was zu sehen ist: Risse, Fehlstellen, alte Restaurierungen</translation>
    </message>
    <message>
        <source>What you make of it</source>
        <translation>Was Sie daraus schließen</translation>
    </message>
    <message>
        <source>What the owner would like</source>
        <translation>Was der Eigentümer wünscht</translation>
    </message>
    <message>
        <source>What the owner tells of it</source>
        <translation>Was der Eigentümer davon erzählt</translation>
    </message>
    <message>
        <source>Maker or place</source>
        <translation>Werkstatt oder Herkunft</translation>
    </message>
    <message>
        <source>Marks on it</source>
        <translation>Marken darauf</translation>
    </message>
    <message>
        <source>Worth, as the owner says</source>
        <translation>Wert, nach Angabe des Eigentümers</translation>
    </message>
    <message>
        <source>Its body</source>
        <translation>Sein Scherben</translation>
    </message>
    <message>
        <source>Porous</source>
        <translation>Porös</translation>
    </message>
    <message>
        <source>Vitrified</source>
        <translation>Dicht gesintert</translation>
    </message>
    <message>
        <source>Not known</source>
        <translation>Nicht bekannt</translation>
    </message>
    <message>
        <source>An amount such as 120 or 120.50, nothing else.</source>
        <translation>Ein Betrag wie 120 oder 120,50, sonst nichts.</translation>
    </message>
    <message>
        <source>Promised in</source>
        <translation>Zugesagt in</translation>
    </message>
    <message numerus="yes">
        <source>%n weeks</source>
        <translation>
            <numerusform>%n Woche</numerusform>
            <numerusform>%n Wochen</numerusform>
        </translation>
    </message>
    <message>
        <source>or on another day, such as %1</source>
        <translation>oder an einem anderen Tag, etwa %1</translation>
    </message>
    <message>
        <source>That is no day of the calendar.</source>
        <translation>Diesen Tag gibt es im Kalender nicht.</translation>
    </message>
    <message>
        <source>Price from</source>
        <translation>Preis von</translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
    <message>
        <source>Deposit paid now</source>
        <translation>Anzahlung jetzt</translation>
    </message>
    <message>
        <source>phone ends in %1</source>
        <translation>Telefon endet auf %1</translation>
    </message>
    <message>
        <source>Old mends, one behind the other with ; between them</source>
        <translation>Alte Restaurierungen, hintereinander mit ; dazwischen</translation>
    </message>
    <message>
        <source>What is in it from before? It says how warm the piece may get and which solvent may come near it.</source>
        <translation>Was ist von früher darin? Es sagt, wie warm das Stück werden und welches Lösemittel ihm nahe kommen darf.</translation>
    </message>
    <message>
        <source>Also agreed, where it is wanted</source>
        <translation>Außerdem vereinbart, wo gewünscht</translation>
    </message>
    <message>
        <source>A number above nothing, such as 82 or %1.</source>
        <translation>Eine Zahl über null, etwa 82 oder %1.</translation>
    </message>
    <message>
        <source>in</source>
        <translation>in</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>cm</source>
        <translation>cm</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>Depth</source>
        <translation>Tiefe</translation>
    </message>
    <message>
        <source>Wall at the break</source>
        <translation>Wandstärke am Bruch</translation>
    </message>
    <message>
        <source>Weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>oz</source>
        <translation>oz</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Seams on both faces, added up</source>
        <translation>Nähte auf beiden Seiten, zusammen</translation>
    </message>
    <message>
        <source>Chips and losses to fill, added up</source>
        <translation>Zu füllende Ausbrüche und Fehlstellen, zusammen</translation>
    </message>
</context>
<context>
    <name>mend::app::MainWindow</name>
    <message>
        <source>Mendbench</source>
        <translation>Mendbench</translation>
    </message>
    <message>
        <source>Spaces</source>
        <translation>Räume</translation>
    </message>
    <message>
        <source>Notices</source>
        <translation>Hinweise</translation>
    </message>
    <message>
        <source>Most urgent on the bench</source>
        <translation>Das Dringendste am Werktisch</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Werktisch</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 put off</source>
        <translation>%1 aufgeschoben</translation>
    </message>
    <message>
        <source>%1: %2 until %3</source>
        <translation>%1: %2 bis %3</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Sound is off in Settings: alerts are only seen.</source>
        <translation>Der Ton ist in den Einstellungen aus: Alarme sind nur zu sehen.</translation>
    </message>
    <message>
        <source>See all</source>
        <translation>Alle sehen</translation>
    </message>
    <message numerus="yes">
        <source>%1, and %n more</source>
        <translation>
            <numerusform>%1, und %n weiterer</numerusform>
            <numerusform>%1, und %n weitere</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>mend::app::Notices</name>
    <message>
        <source>Save it elsewhere</source>
        <translation>Anderswo speichern</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Verstanden</translation>
    </message>
    <message>
        <source>See the backups</source>
        <translation>Sicherungen sehen</translation>
    </message>
</context>
<context>
    <name>mend::app::OwnersLink</name>
    <message>
        <source>May be %1, who is here: the contact is the same.</source>
        <translation>Ist vielleicht %1, schon hier: die Anschrift ist dieselbe.</translation>
    </message>
    <message>
        <source>May be %1, who is here: the name is the same.</source>
        <translation>Ist vielleicht %1, schon hier: der Name ist derselbe.</translation>
    </message>
    <message>
        <source>May be %1, who is here: the name is nearly the same.</source>
        <translation>Ist vielleicht %1, schon hier: der Name ist fast derselbe.</translation>
    </message>
    <message>
        <source>no name</source>
        <translation>kein Name</translation>
    </message>
    <message>
        <source>May be the one in line %1 of the same list.</source>
        <translation>Steht vielleicht schon in Zeile %1 derselben Liste.</translation>
    </message>
    <message>
        <source>Those who are here cannot be read now. Try again.</source>
        <translation>Wer schon hier ist, lässt sich jetzt nicht lesen. Versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>This file cannot be read. Is it still there?</source>
        <translation>Diese Datei lässt sich nicht lesen. Ist sie noch da?</translation>
    </message>
    <message>
        <source>Line %1: %2</source>
        <translation>Zeile %1: %2</translation>
    </message>
    <message>
        <source>Nobody of the list is kept: the bench file does not take it.</source>
        <translation>Niemand aus der Liste ist behalten: die Datei nimmt es nicht an.</translation>
    </message>
</context>
<context>
    <name>mend::app::Panel</name>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
    <message>
        <source>Your words</source>
        <translation>Ihre Worte</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>from which mix?</source>
        <translation>aus welchem Ansatz?</translation>
    </message>
    <message>
        <source>mixed %1</source>
        <translation>angemischt %1</translation>
    </message>
    <message>
        <source>None of these</source>
        <translation>Aus keinem davon</translation>
    </message>
    <message>
        <source>this closes meanwhile</source>
        <translation>inzwischen schließt dies</translation>
    </message>
    <message>
        <source>all the same</source>
        <translation>trotzdem</translation>
    </message>
    <message>
        <source>Not now</source>
        <translation>Jetzt nicht</translation>
    </message>
    <message>
        <source>Which place has been read?</source>
        <translation>Welcher Ort wurde gemessen?</translation>
    </message>
    <message>
        <source>no reading</source>
        <translation>keine Messung</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>%1: humidity</source>
        <translation>%1: Feuchte</translation>
    </message>
    <message>
        <source>%1: temperature</source>
        <translation>%1: Temperatur</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>°F</source>
        <translation>°F</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>– %1</source>
        <translation>– %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>That is the reading</source>
        <translation>Das ist die Messung</translation>
    </message>
    <message>
        <source>Without humidity</source>
        <translation>Ohne Feuchte</translation>
    </message>
    <message>
        <source>Below zero</source>
        <translation>Unter null</translation>
    </message>
    <message>
        <source>This mix is over</source>
        <translation>Dieser Ansatz ist zu Ende</translation>
    </message>
    <message>
        <source>%1 mix</source>
        <translation>Ansatz %1</translation>
    </message>
    <message>
        <source>stiff by %1</source>
        <translation>steif um %1</translation>
    </message>
    <message>
        <source>batch %1</source>
        <translation>Charge %1</translation>
    </message>
    <message>
        <source>On nothing yet.</source>
        <translation>Noch auf nichts.</translation>
    </message>
    <message>
        <source>On %1.</source>
        <translation>Auf %1.</translation>
    </message>
    <message>
        <source>It is stiff</source>
        <translation>Er ist steif</translation>
    </message>
    <message>
        <source>It is used up</source>
        <translation>Er ist verbraucht</translation>
    </message>
    <message>
        <source>Thrown away</source>
        <translation>Weggeworfen</translation>
    </message>
    <message>
        <source>What is being mixed now?</source>
        <translation>Was wird jetzt angemischt?</translation>
    </message>
    <message>
        <source>Who is at the bench?</source>
        <translation>Wer ist am Werktisch?</translation>
    </message>
    <message>
        <source>at the bench now</source>
        <translation>jetzt am Werktisch</translation>
    </message>
    <message>
        <source>I am back</source>
        <translation>Ich bin zurück</translation>
    </message>
    <message>
        <source>I am away for a while</source>
        <translation>Ich bin eine Weile weg</translation>
    </message>
    <message>
        <source>free until %1</source>
        <translation>frei bis %1</translation>
    </message>
    <message>
        <source>Closing for today</source>
        <translation>Schluss für heute</translation>
    </message>
    <message>
        <source>before you go</source>
        <translation>bevor Sie gehen</translation>
    </message>
    <message>
        <source>Show owners&apos; names</source>
        <translation>Namen der Eigentümer zeigen</translation>
    </message>
    <message>
        <source>Hide owners&apos; names</source>
        <translation>Namen der Eigentümer verbergen</translation>
    </message>
    <message>
        <source>Wipe the glass</source>
        <translation>Glas putzen</translation>
    </message>
    <message>
        <source>20 s without touch</source>
        <translation>20 s ohne Berührung</translation>
    </message>
    <message>
        <source>First: %1, start by %2</source>
        <translation>Zuerst: %1, beginnen bis %2</translation>
    </message>
    <message>
        <source>Read the %1 first</source>
        <translation>Erst messen: %1</translation>
    </message>
    <message>
        <source>its reading is too old</source>
        <translation>die Messung ist zu alt</translation>
    </message>
    <message>
        <source>The bench is left</source>
        <translation>Der Werktisch ist verlassen</translation>
    </message>
    <message>
        <source>What hangs over the bench</source>
        <translation>Was über dem Werktisch hängt</translation>
    </message>
    <message>
        <source>Nothing.</source>
        <translation>Nichts.</translation>
    </message>
    <message>
        <source>Put off on purpose</source>
        <translation>Mit Absicht aufgeschoben</translation>
    </message>
    <message>
        <source>%1: calls again at %2</source>
        <translation>%1: ruft wieder um %2</translation>
    </message>
    <message>
        <source>Call me now</source>
        <translation>Jetzt rufen</translation>
    </message>
    <message>
        <source>Sound</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>No sound can be played on this device. Windows are shown as before.</source>
        <translation>Auf diesem Gerät kommt kein Ton. Zeitfenster sind zu sehen wie zuvor.</translation>
    </message>
    <message>
        <source>Sound is off in Settings. Alerts are only seen.</source>
        <translation>Der Ton ist in den Einstellungen aus. Alarme sind nur zu sehen.</translation>
    </message>
    <message>
        <source>The next alert is due at %1.</source>
        <translation>Der nächste Alarm ist um %1 fällig.</translation>
    </message>
    <message>
        <source>Sound again</source>
        <translation>Wieder Ton</translation>
    </message>
    <message>
        <source>Pause all sound</source>
        <translation>Allen Ton ruhen lassen</translation>
    </message>
    <message>
        <source>10 min at most</source>
        <translation>höchstens 10 min</translation>
    </message>
    <message>
        <source>This piece is not on the bench any more</source>
        <translation>Dieses Stück ist nicht mehr am Werktisch</translation>
    </message>
    <message>
        <source>It happened a while ago</source>
        <translation>Es geschah vor einer Weile</translation>
    </message>
    <message>
        <source>Why these times</source>
        <translation>Warum diese Zeiten</translation>
    </message>
    <message>
        <source>Put it in another place</source>
        <translation>An einen anderen Ort legen</translation>
    </message>
    <message>
        <source>Write a note</source>
        <translation>Notiz schreiben</translation>
    </message>
    <message>
        <source>Leave this stage out</source>
        <translation>Diesen Schritt auslassen</translation>
    </message>
    <message>
        <source>leave this stage out, because</source>
        <translation>diesen Schritt auslassen, weil</translation>
    </message>
    <message>
        <source>The owner does not want it</source>
        <translation>Der Eigentümer will es nicht</translation>
    </message>
    <message>
        <source>Not needed on this piece</source>
        <translation>An diesem Stück nicht nötig</translation>
    </message>
    <message>
        <source>Done another way</source>
        <translation>Auf andere Weise gemacht</translation>
    </message>
    <message>
        <source>Send it back a stage</source>
        <translation>Einen Schritt zurück</translation>
    </message>
    <message>
        <source>Stop work on it</source>
        <translation>Die Arbeit ruhen lassen</translation>
    </message>
    <message>
        <source>stop work, because</source>
        <translation>Arbeit ruhen lassen, weil</translation>
    </message>
    <message>
        <source>Waiting for the owner</source>
        <translation>Warten auf den Eigentümer</translation>
    </message>
    <message>
        <source>Waiting for material</source>
        <translation>Warten auf Material</translation>
    </message>
    <message>
        <source>It needs another look</source>
        <translation>Es muss noch einmal angesehen werden</translation>
    </message>
    <message>
        <source>Take back or move a fact</source>
        <translation>Eintragung zurücknehmen oder verlegen</translation>
    </message>
    <message>
        <source>call me then</source>
        <translation>dann rufen</translation>
    </message>
    <message>
        <source>what happened a while ago?</source>
        <translation>was geschah vor einer Weile?</translation>
    </message>
    <message>
        <source>When was that? It is %1 now.</source>
        <translation>Wann war das? Jetzt ist es %1.</translation>
    </message>
    <message>
        <source>where is it now?</source>
        <translation>wo ist es jetzt?</translation>
    </message>
    <message>
        <source>%1 of %2 slots</source>
        <translation>%1 von %2 Plätzen</translation>
    </message>
    <message>
        <source>a note</source>
        <translation>eine Notiz</translation>
    </message>
    <message>
        <source>Your words, kept with the piece</source>
        <translation>Ihre Worte, sie bleiben beim Stück</translation>
    </message>
    <message>
        <source>Keep the note</source>
        <translation>Notiz behalten</translation>
    </message>
    <message>
        <source>Your own words, if you like</source>
        <translation>Eigene Worte, wenn Sie mögen</translation>
    </message>
    <message>
        <source>For the reason written above</source>
        <translation>Aus dem Grund oben</translation>
    </message>
    <message>
        <source>from which stage must it be done again?</source>
        <translation>ab welchem Schritt noch einmal?</translation>
    </message>
    <message>
        <source>No stage of it is done yet.</source>
        <translation>Noch ist kein Schritt gemacht.</translation>
    </message>
    <message>
        <source>no. %1</source>
        <translation>Nr. %1</translation>
    </message>
    <message>
        <source>%1 again, because</source>
        <translation>noch einmal %1, weil</translation>
    </message>
    <message>
        <source>It did not hold</source>
        <translation>Es hat nicht gehalten</translation>
    </message>
    <message>
        <source>It is out of line</source>
        <translation>Es ist aus der Flucht</translation>
    </message>
    <message>
        <source>The surface is not right</source>
        <translation>Die Oberfläche stimmt nicht</translation>
    </message>
    <message>
        <source>told of the last day</source>
        <translation>eingetragen am letzten Tag</translation>
    </message>
    <message>
        <source>Nothing was told of it in the last day.</source>
        <translation>Am letzten Tag wurde dazu nichts eingetragen.</translation>
    </message>
    <message>
        <source>Told for %1.</source>
        <translation>Eingetragen für %1.</translation>
    </message>
    <message>
        <source>It did not happen</source>
        <translation>Es ist nicht geschehen</translation>
    </message>
    <message>
        <source>It was at another time</source>
        <translation>Es war zu einer anderen Zeit</translation>
    </message>
    <message>
        <source>It was another piece</source>
        <translation>Es war ein anderes Stück</translation>
    </message>
    <message>
        <source>%1, at</source>
        <translation>%1, um</translation>
    </message>
    <message>
        <source>%1 sooner</source>
        <translation>%1 früher</translation>
    </message>
    <message>
        <source>%1 later</source>
        <translation>%1 später</translation>
    </message>
    <message>
        <source>%1: which piece was it?</source>
        <translation>%1: welches Stück war es?</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <translation>%1 um %2</translation>
    </message>
    <message>
        <source>No window moves.</source>
        <translation>Kein Zeitfenster verschiebt sich.</translation>
    </message>
    <message>
        <source>Tell it so</source>
        <translation>So eintragen</translation>
    </message>
    <message>
        <source>Leave it as it was</source>
        <translation>Lassen, wie es war</translation>
    </message>
    <message>
        <source>why these times</source>
        <translation>warum diese Zeiten</translation>
    </message>
    <message>
        <source>Nothing on this card is counted.</source>
        <translation>Auf dieser Karte wird nichts gezählt.</translation>
    </message>
    <message>
        <source>Start by %1: the close, less %2 of hands</source>
        <translation>Beginnen bis %1: das Schließen, weniger %2 Handarbeit</translation>
    </message>
    <message>
        <source>nothing stands against it any more</source>
        <translation>nichts spricht mehr dagegen</translation>
    </message>
    <message>
        <source>before you start</source>
        <translation>bevor Sie beginnen</translation>
    </message>
    <message>
        <source>The product&apos;s safety data sheet and local rules come before any line on this screen.</source>
        <translation>Das Sicherheitsdatenblatt des Produkts und die örtlichen Vorschriften gehen jeder Zeile auf diesem Bildschirm vor.</translation>
    </message>
    <message>
        <source>Open this piece</source>
        <translation>Dieses Stück öffnen</translation>
    </message>
</context>
<context>
    <name>mend::app::PaperDesk</name>
    <message>
        <source>It could not be written to %1. Choose another folder.</source>
        <translation>Nach %1 ließ sich nicht schreiben. Wählen Sie einen anderen Ordner.</translation>
    </message>
    <message>
        <source>Written: %1, 1 page.</source>
        <translation>Geschrieben: %1, 1 Seite.</translation>
    </message>
    <message>
        <source>Written: %1, %2 pages.</source>
        <translation>Geschrieben: %1, %2 Seiten.</translation>
    </message>
    <message>
        <source>No typeface here has %1; their numbers stand instead.</source>
        <translation>Keine Schrift hier hat %1; statt ihrer stehen die Nummern.</translation>
    </message>
    <message>
        <source>Tag for the bag</source>
        <translation>Anhänger für den Beutel</translation>
    </message>
    <message>
        <source>It could not be written: the bench file cannot be read now.</source>
        <translation>Schreiben ging nicht: die Datei lässt sich gerade nicht lesen.</translation>
    </message>
</context>
<context>
    <name>mend::app::PhotoBoard</name>
    <message>
        <source>The photo: the arrows move a cross, Enter marks the place</source>
        <translation>Das Foto: die Pfeile bewegen ein Kreuz, die Eingabetaste setzt die Marke</translation>
    </message>
</context>
<context>
    <name>mend::app::PieceLink</name>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>went back unmended</source>
        <translation>ging unrestauriert zurück</translation>
    </message>
    <message>
        <source>handed over</source>
        <translation>ausgegeben</translation>
    </message>
    <message>
        <source>on hold</source>
        <translation>ruht</translation>
    </message>
    <message>
        <source>Taking the photo in.</source>
        <translation>Das Foto wird aufgenommen.</translation>
    </message>
    <message>
        <source>Taking %1 photos in.</source>
        <translation>%1 Fotos werden aufgenommen.</translation>
    </message>
    <message>
        <source>This photo is damaged in the file. Settings, Backup has an earlier one.</source>
        <translation>Dieses Foto ist in der Datei beschädigt. Unter Einstellungen, Sicherung liegt ein früheres.</translation>
    </message>
    <message>
        <source>Being written.</source>
        <translation>Wird geschrieben.</translation>
    </message>
    <message>
        <source>It is no longer in the house.</source>
        <translation>Es ist nicht mehr im Haus.</translation>
    </message>
    <message>
        <source>%1 is handed over</source>
        <translation>%1 ist ausgegeben</translation>
    </message>
    <message>
        <source>%1 is given back unmended</source>
        <translation>%1 ist unrestauriert zurückgegeben</translation>
    </message>
    <message>
        <source>%1 × %2 mm</source>
        <translation>%1 × %2 mm</translation>
    </message>
</context>
<context>
    <name>mend::app::PieceSpace</name>
    <message>
        <source>Photos</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>kept upright, without the place they were taken at</source>
        <translation>aufrecht aufgehoben, ohne den Ort der Aufnahme</translation>
    </message>
    <message>
        <source>Add photos</source>
        <translation>Fotos hinzufügen</translation>
    </message>
    <message>
        <source>What they show</source>
        <translation>Was sie zeigen</translation>
    </message>
    <message>
        <source>Choose files</source>
        <translation>Dateien wählen</translation>
    </message>
    <message>
        <source>or drop them here</source>
        <translation>oder hier fallen lassen</translation>
    </message>
    <message>
        <source>Paste</source>
        <translation>Einfügen</translation>
    </message>
    <message>
        <source>a copied picture</source>
        <translation>ein kopiertes Bild</translation>
    </message>
    <message>
        <source>1 mark</source>
        <translation>1 Marke</translation>
    </message>
    <message>
        <source>%1 marks</source>
        <translation>%1 Marken</translation>
    </message>
    <message>
        <source>Photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>All photos</source>
        <translation>Alle Fotos</translation>
    </message>
    <message>
        <source>Tap the place on the photo.</source>
        <translation>Tippen Sie die Stelle auf dem Foto an.</translation>
    </message>
    <message>
        <source>Mark on it:</source>
        <translation>Marke darauf:</translation>
    </message>
    <message>
        <source>Words under the photo</source>
        <translation>Worte unter dem Foto</translation>
    </message>
    <message>
        <source>Keep the words</source>
        <translation>Worte behalten</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
    <message>
        <source>What is to be said of it, such as “rim, 12 mm”</source>
        <translation>Was dazu zu sagen ist, etwa „Rand, 12 mm“</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>Take the mark off</source>
        <translation>Marke wegnehmen</translation>
    </message>
    <message>
        <source>Choose photos</source>
        <translation>Fotos wählen</translation>
    </message>
    <message>
        <source>Take this photo</source>
        <translation>Dieses Foto nehmen</translation>
    </message>
    <message>
        <source>Take these %1 photos</source>
        <translation>Diese %1 Fotos nehmen</translation>
    </message>
    <message>
        <source>No photo lies in this folder.</source>
        <translation>In diesem Ordner liegt kein Foto.</translation>
    </message>
    <message>
        <source>The newest %1 of %2 are shown; the rest can be dropped here from a file window.</source>
        <translation>Die neuesten %1 von %2 sind zu sehen; der Rest lässt sich aus einem Dateifenster hier fallen lassen.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>the first time</source>
        <translation>das erste Mal</translation>
    </message>
    <message>
        <source>a join gave way</source>
        <translation>eine Klebung hat nachgegeben</translation>
    </message>
    <message>
        <source>broken anew</source>
        <translation>neu zerbrochen</translation>
    </message>
    <message>
        <source>a fragment was found</source>
        <translation>eine Scherbe fand sich</translation>
    </message>
    <message>
        <source>another reason</source>
        <translation>ein anderer Grund</translation>
    </message>
    <message>
        <source>Condition and consent</source>
        <translation>Zustand und Einwilligung</translation>
    </message>
    <message>
        <source>It was taken in with the short form: nothing was written down of its condition.</source>
        <translation>Es wurde mit dem kurzen Blatt angenommen: über den Zustand wurde nichts aufgeschrieben.</translation>
    </message>
    <message>
        <source>Seen</source>
        <translation>Gesehen</translation>
    </message>
    <message>
        <source>Nothing written down.</source>
        <translation>Nichts aufgeschrieben.</translation>
    </message>
    <message>
        <source>Looked at: %1</source>
        <translation>Betrachtet: %1</translation>
    </message>
    <message>
        <source>Old mend: %1</source>
        <translation>Alte Restaurierung: %1</translation>
    </message>
    <message>
        <source>Inferred, not seen</source>
        <translation>Geschlossen, nicht gesehen</translation>
    </message>
    <message>
        <source>Nothing.</source>
        <translation>Nichts.</translation>
    </message>
    <message>
        <source>Put it right</source>
        <translation>Berichtigen</translation>
    </message>
    <message>
        <source>Consent</source>
        <translation>Einwilligung</translation>
    </message>
    <message>
        <source>Signed on paper, %1.</source>
        <translation>Auf Papier unterschrieben, %1.</translation>
    </message>
    <message>
        <source>Signed on the screen, %1.</source>
        <translation>Am Bildschirm unterschrieben, %1.</translation>
    </message>
    <message>
        <source>Not signed.</source>
        <translation>Nicht unterschrieben.</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>Wished for: %1</source>
        <translation>Gewünscht: %1</translation>
    </message>
    <message>
        <source>Told of it: %1</source>
        <translation>Darauf hingewiesen: %1</translation>
    </message>
    <message>
        <source>Put the condition right</source>
        <translation>Den Zustand berichtigen</translation>
    </message>
    <message>
        <source>What is seen</source>
        <translation>Was zu sehen ist</translation>
    </message>
    <message>
        <source>What is inferred from it, kept apart</source>
        <translation>Was daraus geschlossen wird, getrennt gehalten</translation>
    </message>
    <message>
        <source>By what it was looked at</source>
        <translation>Womit es betrachtet wurde</translation>
    </message>
    <message>
        <source>Keep it so</source>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>Leave it as it was</source>
        <translation>Lassen, wie es war</translation>
    </message>
    <message>
        <source>Fragments and what came with it</source>
        <translation>Scherben und Zubehör</translation>
    </message>
    <message>
        <source>not counted</source>
        <translation>nicht gezählt</translation>
    </message>
    <message>
        <source>in %1, out %2</source>
        <translation>ein %1, aus %2</translation>
    </message>
    <message>
        <source>Fragments</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>What came with it</source>
        <translation>Was dabei war</translation>
    </message>
    <message>
        <source>A fragment was found</source>
        <translation>Eine Scherbe fand sich</translation>
    </message>
    <message>
        <source>How many</source>
        <translation>Wie viele</translation>
    </message>
    <message>
        <source>fragments</source>
        <translation>Scherben</translation>
    </message>
    <message>
        <source>A whole number from 1 to 999.</source>
        <translation>Eine ganze Zahl von 1 bis 999.</translation>
    </message>
    <message>
        <source>Where it was found</source>
        <translation>Wo sie sich fand</translation>
    </message>
    <message>
        <source>Count it in</source>
        <translation>Dazuzählen</translation>
    </message>
    <message>
        <source>say how many</source>
        <translation>sagen Sie, wie viele</translation>
    </message>
    <message>
        <source>Stages</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
    <message>
        <source>To do</source>
        <translation>Zu tun</translation>
    </message>
    <message>
        <source>Nothing is agreed yet.</source>
        <translation>Noch ist nichts vereinbart.</translation>
    </message>
    <message>
        <source>It is not in the house: its record says what was done.</source>
        <translation>Es ist nicht im Haus: was gemacht wurde, steht in der Dokumentation.</translation>
    </message>
    <message>
        <source>Visits</source>
        <translation>Besuche</translation>
    </message>
    <message>
        <source>a piece that comes back keeps its number</source>
        <translation>ein Stück, das zurückkommt, behält seine Nummer</translation>
    </message>
    <message>
        <source>what gave way was named</source>
        <translation>was nachgab, ist benannt</translation>
    </message>
    <message>
        <source>handed over %1</source>
        <translation>ausgegeben %1</translation>
    </message>
    <message>
        <source>returned unmended %1</source>
        <translation>unrestauriert zurück %1</translation>
    </message>
    <message>
        <source>Visit %1</source>
        <translation>Besuch %1</translation>
    </message>
    <message>
        <source>Its owner, told and owed</source>
        <translation>Eigentümer, Nachrichten und Offenes</translation>
    </message>
    <message>
        <source>Show the owner</source>
        <translation>Eigentümer zeigen</translation>
    </message>
    <message>
        <source>Hide the owner</source>
        <translation>Eigentümer verbergen</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Paid</source>
        <translation>Bezahlt</translation>
    </message>
    <message>
        <source>Still owed</source>
        <translation>Noch offen</translation>
    </message>
    <message>
        <source>Told so far</source>
        <translation>Bisher mitgeteilt</translation>
    </message>
    <message>
        <source>Nothing yet.</source>
        <translation>Noch nichts.</translation>
    </message>
    <message>
        <source>Told now</source>
        <translation>Jetzt mitgeteilt</translation>
    </message>
    <message>
        <source>What about</source>
        <translation>Worüber</translation>
    </message>
    <message>
        <source>Rung</source>
        <translation>Angerufen</translation>
    </message>
    <message>
        <source>Written by e-mail</source>
        <translation>Per E-Mail geschrieben</translation>
    </message>
    <message>
        <source>In person</source>
        <translation>Persönlich</translation>
    </message>
    <message>
        <source>Notice in form, because it lies here unclaimed. It is only logged: nothing is ever disposed of by itself, and local law says what may follow.</source>
        <translation>Förmliche Mitteilung, weil es nicht abgeholt ist. Sie wird nur eingetragen: nichts wird je von selbst weggegeben, und was folgen darf, sagt das örtliche Recht.</translation>
    </message>
    <message>
        <source>By letter</source>
        <translation>Per Brief</translation>
    </message>
    <message>
        <source>By recorded letter</source>
        <translation>Per Einschreiben</translation>
    </message>
    <message>
        <source>Papers</source>
        <translation>Papiere</translation>
    </message>
    <message>
        <source>PDF, to print or to send</source>
        <translation>PDF, zum Drucken oder Senden</translation>
    </message>
    <message>
        <source>Into this folder</source>
        <translation>In diesen Ordner</translation>
    </message>
    <message>
        <source>There is no such folder yet; it will be made.</source>
        <translation>Diesen Ordner gibt es noch nicht; er wird angelegt.</translation>
    </message>
    <message>
        <source>On</source>
        <translation>An</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>US-Brief</translation>
    </message>
    <message>
        <source>Write it</source>
        <translation>Schreiben</translation>
    </message>
    <message>
        <source>Piece</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>About this piece</source>
        <translation>Über dieses Stück</translation>
    </message>
    <message>
        <source>No piece is open. Tap “More” on a card of the Bench, or find one by its number, its name or its owner.</source>
        <translation>Kein Stück ist offen. Tippen Sie am Werktisch auf „Mehr“ einer Karte, oder suchen Sie eines nach Nummer, Name oder Eigentümer.</translation>
    </message>
    <message>
        <source>signed</source>
        <translation>unterschrieben</translation>
    </message>
    <message>
        <source>not signed</source>
        <translation>nicht unterschrieben</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>No photo yet</source>
        <translation>Noch kein Foto</translation>
    </message>
    <message>
        <source>Tag %1</source>
        <translation>Anhänger %1</translation>
    </message>
    <message>
        <source>Next: %1</source>
        <translation>Als Nächstes: %1</translation>
    </message>
    <message>
        <source>hidden</source>
        <translation>verborgen</translation>
    </message>
    <message>
        <source>erased at their wish</source>
        <translation>auf ihren Wunsch gelöscht</translation>
    </message>
    <message>
        <source>1 notice that it lies here unclaimed</source>
        <translation>1 Mitteilung, dass es nicht abgeholt ist</translation>
    </message>
    <message>
        <source>%1 notices that it lies here unclaimed</source>
        <translation>%1 Mitteilungen, dass es nicht abgeholt ist</translation>
    </message>
    <message>
        <source>Whose it is</source>
        <translation>Wem es gehört</translation>
    </message>
    <message>
        <source>Promised</source>
        <translation>Zugesagt</translation>
    </message>
    <message>
        <source>Handed over</source>
        <translation>Ausgegeben</translation>
    </message>
    <message>
        <source>Returned unmended</source>
        <translation>Unrestauriert zurück</translation>
    </message>
    <message>
        <source>work is still to do</source>
        <translation>es ist noch Arbeit daran</translation>
    </message>
    <message>
        <source>may be collected</source>
        <translation>kann abgeholt werden</translation>
    </message>
    <message>
        <source>from %1</source>
        <translation>ab %1</translation>
    </message>
    <message>
        <source>Hand it over</source>
        <translation>Ausgeben</translation>
    </message>
    <message>
        <source>Nothing to paste: copy a picture first.</source>
        <translation>Nichts einzufügen: kopieren Sie erst ein Bild.</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>During</source>
        <translation>Während</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>What gave way?</source>
        <translation>Was hat nachgegeben?</translation>
    </message>
    <message>
        <source>In your own words, such as “the join at the handle”</source>
        <translation>In eigenen Worten, etwa „die Klebung am Henkel“</translation>
    </message>
    <message>
        <source>It was this</source>
        <translation>Das war es</translation>
    </message>
    <message>
        <source>The tag on</source>
        <translation>Der Anhänger auf</translation>
    </message>
</context>
<context>
    <name>mend::app::RefusedWindow</name>
    <message>
        <source>Mendbench</source>
        <translation>Mendbench</translation>
    </message>
    <message>
        <source>The bench was not opened</source>
        <translation>Die Datei wurde nicht geöffnet</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Noch einmal versuchen</translation>
    </message>
    <message>
        <source>Two programs writing at once would ruin the file. Only where that machine is surely off or the bench there is closed, take it over.</source>
        <translation>Zwei Programme, die zugleich schreiben, würden die Datei verderben. Übernehmen Sie sie nur, wenn jener Rechner sicher aus oder sie dort geschlossen ist.</translation>
    </message>
    <message>
        <source>It is closed there: open it here</source>
        <translation>Dort ist sie geschlossen: hier öffnen</translation>
    </message>
    <message>
        <source>Close</source>
        <translation>Schließen</translation>
    </message>
    <message>
        <source>There is no backup of it</source>
        <translation>Es gibt keine Sicherung davon</translation>
    </message>
    <message>
        <source>Go back to a backup</source>
        <translation>Zu einer Sicherung zurückgehen</translation>
    </message>
</context>
<context>
    <name>mend::app::RulesSpace</name>
    <message>
        <source>our own bench</source>
        <translation>eigener Werktisch</translation>
    </message>
    <message>
        <source>Habits of the bench</source>
        <translation>Gewohnheiten am Werktisch</translation>
    </message>
    <message>
        <source>Back to the list</source>
        <translation>Zurück zur Liste</translation>
    </message>
    <message>
        <source>In force</source>
        <translation>In Kraft</translation>
    </message>
    <message>
        <source>It may be</source>
        <translation>Erlaubt ist</translation>
    </message>
    <message>
        <source>a limit that the piece is harmed beyond: only lower</source>
        <translation>eine Grenze, jenseits derer das Stück Schaden nimmt: nur tiefer</translation>
    </message>
    <message>
        <source>The new number</source>
        <translation>Die neue Zahl</translation>
    </message>
    <message>
        <source>Where it comes from</source>
        <translation>Woher sie kommt</translation>
    </message>
    <message>
        <source>No number stands without its source.</source>
        <translation>Keine Zahl steht ohne ihre Quelle.</translation>
    </message>
    <message>
        <source>See what it would do</source>
        <translation>Sehen, was sie bewirken würde</translation>
    </message>
    <message>
        <source>The shipped number again</source>
        <translation>Wieder die mitgelieferte Zahl</translation>
    </message>
    <message>
        <source>What it would do to the bench now</source>
        <translation>Was sie jetzt am Werktisch bewirken würde</translation>
    </message>
    <message>
        <source>Nothing that runs now would move.</source>
        <translation>Nichts, was jetzt läuft, würde sich verschieben.</translation>
    </message>
    <message>
        <source>Keep it</source>
        <translation>Behalten</translation>
    </message>
    <message>
        <source>for this bench, from now on</source>
        <translation>für diesen Werktisch, von jetzt an</translation>
    </message>
    <message>
        <source>This is no number.</source>
        <translation>Das ist keine Zahl.</translation>
    </message>
    <message>
        <source>It may be %1; a limit may only be lowered.</source>
        <translation>Erlaubt ist %1; eine Grenze darf nur gesenkt werden.</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Regeln</translation>
    </message>
    <message>
        <source>One rule</source>
        <translation>Eine Regel</translation>
    </message>
    <message>
        <source>Kept. New pieces follow it from now on; those in hand keep theirs until you say otherwise.</source>
        <translation>Behalten. Neue Stücke folgen ihr von jetzt an; die im Haus behalten ihre, bis Sie es anders sagen.</translation>
    </message>
    <message>
        <source>%1 procedures</source>
        <translation>%1 Verfahren</translation>
    </message>
    <message>
        <source>Refused: %1, line %2: %3</source>
        <translation>Abgelehnt: %1, Zeile %2: %3</translation>
    </message>
    <message>
        <source>changed, not kept yet</source>
        <translation>geändert, noch nicht behalten</translation>
    </message>
    <message>
        <source>rev. %1</source>
        <translation>Fassung %1</translation>
    </message>
    <message>
        <source>What they share</source>
        <translation>Was sie gemeinsam haben</translation>
    </message>
    <message>
        <source>Materials</source>
        <translation>Materialien</translation>
    </message>
    <message>
        <source>How warmth hastens a cure</source>
        <translation>Wie Wärme das Aushärten beschleunigt</translation>
    </message>
    <message>
        <source>What must not meet</source>
        <translation>Was nicht zusammenkommen darf</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Warnhinweise</translation>
    </message>
    <message>
        <source>Every number the bench counts by</source>
        <translation>Jede Zahl, nach der der Werktisch zählt</translation>
    </message>
    <message>
        <source>Choose a procedure, then a stage. Each number stands with its unit, the range that it may be changed in, and where it comes from.</source>
        <translation>Wählen Sie ein Verfahren, dann einen Schritt. Jede Zahl steht mit ihrer Einheit, der Spanne, in der sie sich ändern lässt, und ihrer Herkunft.</translation>
    </message>
    <message>
        <source>A change becomes a new revision. Windows that are open keep the rule they were begun under, unless you say “use it for these too”.</source>
        <translation>Eine Änderung wird zu einer neuen Fassung. Offene Zeitfenster behalten die Regel, unter der sie begannen, außer Sie sagen „auch für diese“.</translation>
    </message>
    <message>
        <source>revision %1</source>
        <translation>Fassung %1</translation>
    </message>
    <message>
        <source>Stages</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Materials and cautions</source>
        <translation>Materialien und Warnhinweise</translation>
    </message>
    <message>
        <source>No window that is open now would move.</source>
        <translation>Kein jetzt offenes Zeitfenster würde sich verschieben.</translation>
    </message>
    <message>
        <source>Changed, not kept yet</source>
        <translation>Geändert, noch nicht behalten</translation>
    </message>
    <message>
        <source>instead of %1 · %2</source>
        <translation>statt %1 · %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>What it would do to the windows open now</source>
        <translation>Was es an den jetzt offenen Zeitfenstern bewirken würde</translation>
    </message>
    <message>
        <source>Keep it as revision %1</source>
        <translation>Als Fassung %1 behalten</translation>
    </message>
    <message>
        <source>for new pieces</source>
        <translation>für neue Stücke</translation>
    </message>
    <message>
        <source>not with the faults above</source>
        <translation>nicht mit den Fehlern oben</translation>
    </message>
    <message>
        <source>Drop the changes</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>Pieces in hand under an earlier revision</source>
        <translation>Stücke im Haus unter einer früheren Fassung</translation>
    </message>
    <message>
        <source>Use it for these too</source>
        <translation>Auch für diese</translation>
    </message>
    <message>
        <source>Put it in</source>
        <translation>Einsetzen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
    <message>
        <source>Nothing changes on the bench by this alone: it is first shown what it would do.</source>
        <translation>Allein dadurch ändert sich am Werktisch nichts: zuerst wird gezeigt, was es bewirken würde.</translation>
    </message>
    <message>
        <source>It may be %1: beyond that the procedure no longer holds.</source>
        <translation>Erlaubt ist %1: darüber hinaus trägt das Verfahren nicht mehr.</translation>
    </message>
</context>
<context>
    <name>mend::app::SaveElsewhere</name>
    <message>
        <source>Save it elsewhere</source>
        <translation>Anderswo speichern</translation>
    </message>
    <message>
        <source>Not now</source>
        <translation>Jetzt nicht</translation>
    </message>
    <message>
        <source>The whole bench is copied there, with everything you told that is not stored yet, and goes on there. Nothing is written over; what stands in the old place is left alone.</source>
        <translation>Alles wird dorthin kopiert, auch Eintragungen, die noch nicht gespeichert sind, und geht dort weiter. Nichts wird überschrieben; was am alten Ort liegt, bleibt unberührt.</translation>
    </message>
    <message>
        <source>Where: a folder of yours and a new name</source>
        <translation>Wohin: ein eigener Ordner und ein neuer Name</translation>
    </message>
    <message>
        <source>Save it there and go on</source>
        <translation>Dort speichern und weitermachen</translation>
    </message>
    <message>
        <source>being copied</source>
        <translation>wird gerade kopiert</translation>
    </message>
    <message>
        <source>The whole path is needed, from the first / on.</source>
        <translation>Der ganze Pfad ist nötig, ab dem ersten /.</translation>
    </message>
    <message>
        <source>Something stands there already. Choose another name.</source>
        <translation>Dort liegt schon etwas. Wählen Sie einen anderen Namen.</translation>
    </message>
</context>
<context>
    <name>mend::app::SettingsSpace</name>
    <message>
        <source>Sound</source>
        <translation>Ton</translation>
    </message>
    <message>
        <source>Sound is off. A line stands across the window as long as it is.</source>
        <translation>Der Ton ist aus. So lange steht eine Zeile quer über dem Fenster.</translation>
    </message>
    <message>
        <source>No device takes the sound now. Every alert is still seen.</source>
        <translation>Kein Gerät nimmt jetzt den Ton an. Jeder Alarm ist weiter zu sehen.</translation>
    </message>
    <message>
        <source>Did you hear it, from where you work?</source>
        <translation>Haben Sie es gehört, von da, wo Sie arbeiten?</translation>
    </message>
    <message>
        <source>I heard it</source>
        <translation>Ich habe es gehört</translation>
    </message>
    <message>
        <source>I heard nothing</source>
        <translation>Ich habe nichts gehört</translation>
    </message>
    <message>
        <source>Play it again</source>
        <translation>Noch einmal spielen</translation>
    </message>
    <message>
        <source>It was not heard: try it louder, or another device.</source>
        <translation>Es war nicht zu hören: lauter versuchen, oder ein anderes Gerät.</translation>
    </message>
    <message>
        <source>Play the most urgent sound</source>
        <translation>Den dringendsten Ton spielen</translation>
    </message>
    <message>
        <source>Whether alerts sound</source>
        <translation>Ob Alarme tönen</translation>
    </message>
    <message>
        <source>Off: alerts are only seen</source>
        <translation>Aus: Alarme sind nur zu sehen</translation>
    </message>
    <message>
        <source>On</source>
        <translation>An</translation>
    </message>
    <message>
        <source>How loud</source>
        <translation>Wie laut</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Where it is played</source>
        <translation>Wo er gespielt wird</translation>
    </message>
    <message>
        <source>Wherever this machine plays</source>
        <translation>Wo dieser Rechner spielt</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Aussehen</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Black and white</source>
        <translation>Schwarz-weiß</translation>
    </message>
    <message>
        <source>Size of everything</source>
        <translation>Größe von allem</translation>
    </message>
    <message>
        <source>What flashes when an alert calls</source>
        <translation>Was blinkt, wenn ein Alarm ruft</translation>
    </message>
    <message>
        <source>Nothing: it stands still</source>
        <translation>Nichts: es steht still</translation>
    </message>
    <message>
        <source>The block&apos;s border</source>
        <translation>Der Rand des großen Felds</translation>
    </message>
    <message>
        <source>Size of the screen</source>
        <translation>Größe des Bildschirms</translation>
    </message>
    <message>
        <source>Hold a bank card against the frame. Make the frame as large as the card; every button is then as large as a gloved thumb.</source>
        <translation>Halten Sie eine Bankkarte an den Rahmen. Machen Sie den Rahmen so groß wie die Karte; jeder Knopf ist dann so groß wie ein Daumen im Handschuh.</translation>
    </message>
    <message>
        <source>Much smaller</source>
        <translation>Viel kleiner</translation>
    </message>
    <message>
        <source>Smaller</source>
        <translation>Kleiner</translation>
    </message>
    <message>
        <source>Larger</source>
        <translation>Größer</translation>
    </message>
    <message>
        <source>Much larger</source>
        <translation>Viel größer</translation>
    </message>
    <message>
        <source>A frame as large as a bank card</source>
        <translation>Ein Rahmen, so groß wie eine Bankkarte</translation>
    </message>
    <message>
        <source>Take what the screen says</source>
        <translation>Nehmen, was der Bildschirm sagt</translation>
    </message>
    <message>
        <source>%1 dots an inch</source>
        <translation>%1 Punkte je Zoll</translation>
    </message>
    <message>
        <source>Hands and pedal</source>
        <translation>Hände und Pedal</translation>
    </message>
    <message>
        <source>Where the buttons of a card stand</source>
        <translation>Wo die Knöpfe einer Karte stehen</translation>
    </message>
    <message>
        <source>At the left</source>
        <translation>Links</translation>
    </message>
    <message>
        <source>At the right</source>
        <translation>Rechts</translation>
    </message>
    <message>
        <source>Letters on the glass</source>
        <translation>Buchstaben auf dem Glas</translation>
    </message>
    <message>
        <source>Whenever I type</source>
        <translation>Immer, wenn ich schreibe</translation>
    </message>
    <message>
        <source>A keyboard is here</source>
        <translation>Eine Tastatur ist da</translation>
    </message>
    <message>
        <source>Pedal or one key</source>
        <translation>Pedal oder eine Taste</translation>
    </message>
    <message>
        <source>Pressed short: hands on it. Held for a second: done, on the large block alone. Each answers with a sound of its own.</source>
        <translation>Kurz gedrückt: bin dran. Eine Sekunde gehalten: fertig, nur auf dem großen Feld. Beides antwortet mit eigenem Ton.</translation>
    </message>
    <message>
        <source>The key now</source>
        <translation>Die Taste jetzt</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>Press the pedal now</source>
        <translation>Jetzt das Pedal drücken</translation>
    </message>
    <message>
        <source>Choose another key</source>
        <translation>Eine andere Taste wählen</translation>
    </message>
    <message>
        <source>Esc leaves it as it is</source>
        <translation>Esc lässt es, wie es ist</translation>
    </message>
    <message>
        <source>No pedal</source>
        <translation>Kein Pedal</translation>
    </message>
    <message>
        <source>Studio</source>
        <translation>Atelier</translation>
    </message>
    <message>
        <source>What the studio is called on papers</source>
        <translation>Wie das Atelier auf Papieren heißt</translation>
    </message>
    <message>
        <source>Call it so</source>
        <translation>So nennen</translation>
    </message>
    <message>
        <source>Time zone: %1</source>
        <translation>Zeitzone: %1</translation>
    </message>
    <message>
        <source>this machine&apos;s</source>
        <translation>die dieses Rechners</translation>
    </message>
    <message>
        <source>Hours of %1</source>
        <translation>Zeiten von %1</translation>
    </message>
    <message>
        <source>Bench hours</source>
        <translation>Arbeitszeiten</translation>
    </message>
    <message>
        <source>Back to the people</source>
        <translation>Zurück zu den Leuten</translation>
    </message>
    <message>
        <source>Nothing told: there whenever the bench is.</source>
        <translation>Nichts eingetragen: da, wenn gearbeitet wird.</translation>
    </message>
    <message>
        <source>Outside them only what can still be saved and is costly sounds; the rest waits for the morning.</source>
        <translation>Außerhalb tönt nur, was teuer und noch zu retten ist; der Rest wartet auf den Morgen.</translation>
    </message>
    <message>
        <source>These are the hours</source>
        <translation>Das sind die Zeiten</translation>
    </message>
    <message>
        <source>an empty day is a day off</source>
        <translation>ein leerer Tag ist frei</translation>
    </message>
    <message>
        <source>Tuesday to Friday as Monday</source>
        <translation>Dienstag bis Freitag wie Montag</translation>
    </message>
    <message>
        <source>Dates that are not like their weekday</source>
        <translation>Tage, die nicht wie ihr Wochentag sind</translation>
    </message>
    <message>
        <source>As its weekday again</source>
        <translation>Wieder wie sein Wochentag</translation>
    </message>
    <message>
        <source>Date: year-month-day</source>
        <translation>Datum: Jahr-Monat-Tag</translation>
    </message>
    <message>
        <source>Hours on that date; nothing: closed</source>
        <translation>Zeiten an diesem Tag; nichts: geschlossen</translation>
    </message>
    <message>
        <source>That day is different</source>
        <translation>Dieser Tag ist anders</translation>
    </message>
    <message>
        <source>People</source>
        <translation>Leute</translation>
    </message>
    <message>
        <source>no accounts: a name is enough</source>
        <translation>keine Konten: ein Name genügt</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>their own</source>
        <translation>eigene</translation>
    </message>
    <message>
        <source>as the bench</source>
        <translation>wie am Werktisch</translation>
    </message>
    <message>
        <source>Rename %1</source>
        <translation>%1 umbenennen</translation>
    </message>
    <message>
        <source>Somebody new</source>
        <translation>Jemand Neues</translation>
    </message>
    <message>
        <source>Works here from now on</source>
        <translation>Arbeitet von jetzt an hier</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Werktisch</translation>
    </message>
    <message>
        <source>Shelf</source>
        <translation>Regal</translation>
    </message>
    <message>
        <source>Cabinet</source>
        <translation>Wärmeschrank</translation>
    </message>
    <message>
        <source>Humid box</source>
        <translation>Feuchtkasten</translation>
    </message>
    <message>
        <source>Tray</source>
        <translation>Wanne</translation>
    </message>
    <message>
        <source>Outside</source>
        <translation>Außer Haus</translation>
    </message>
    <message>
        <source>Places</source>
        <translation>Orte</translation>
    </message>
    <message>
        <source>each has an air of its own</source>
        <translation>jeder hat seine eigene Luft</translation>
    </message>
    <message>
        <source>1 slot</source>
        <translation>1 Platz</translation>
    </message>
    <message numerus="yes">
        <source>%n slots</source>
        <translation>
            <numerusform>%n Platz</numerusform>
            <numerusform>%n Plätze</numerusform>
        </translation>
    </message>
    <message>
        <source>Change it</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>A new place</source>
        <translation>Ein neuer Ort</translation>
    </message>
    <message>
        <source>What it is</source>
        <translation>Was es ist</translation>
    </message>
    <message>
        <source>How many pieces it holds; nothing: as many as you like</source>
        <translation>Wie viele Stücke er fasst; nichts: so viele Sie wollen</translation>
    </message>
    <message>
        <source>pieces</source>
        <translation>Stücke</translation>
    </message>
    <message>
        <source>Keep it so</source>
        <translation>So lassen</translation>
    </message>
    <message>
        <source>Add the place</source>
        <translation>Ort hinzufügen</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Lassen, wie es ist</translation>
    </message>
    <message>
        <source>Units</source>
        <translation>Einheiten</translation>
    </message>
    <message>
        <source>Temperatures</source>
        <translation>Temperaturen</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>°F</source>
        <translation>°F</translation>
    </message>
    <message>
        <source>Lengths</source>
        <translation>Längen</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>in</source>
        <translation>in</translation>
    </message>
    <message>
        <source>What is told is kept in °C and mm whatever is shown.</source>
        <translation>Behalten werden °C und mm, was auch gezeigt wird.</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>As this machine</source>
        <translation>Wie dieser Rechner</translation>
    </message>
    <message>
        <source>The window is written anew at once. What you typed yourself stays as it is, and so do the words of procedures, cautions and papers.</source>
        <translation>Das Fenster wird sofort neu geschrieben. Was Sie selbst geschrieben haben, bleibt, wie es ist, ebenso die Worte der Verfahren, Warnhinweise und Papiere.</translation>
    </message>
    <message>
        <source>Backup</source>
        <translation>Sicherung</translation>
    </message>
    <message>
        <source>Make one now</source>
        <translation>Jetzt eine anlegen</translation>
    </message>
    <message>
        <source>They lie in %1. Copy the whole folder to another disk: the pictures stand beside the backups.</source>
        <translation>Sie liegen in %1. Kopieren Sie den ganzen Ordner auf einen anderen Datenträger: die Bilder stehen neben den Sicherungen.</translation>
    </message>
    <message>
        <source>Kept: tap one to see what is in it, and to go back to it</source>
        <translation>Aufgehoben: tippen Sie eine an, um zu sehen, was darin ist, und zu ihr zurückzugehen</translation>
    </message>
    <message>
        <source>None yet. One is made after the first change of each day, and one when the bench is closed.</source>
        <translation>Noch keine. Eine wird nach der ersten Änderung jedes Tages angelegt, eine beim Schließen.</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>One setting</source>
        <translation>Eine Einstellung</translation>
    </message>
    <message>
        <source>no name yet</source>
        <translation>noch kein Name</translation>
    </message>
    <message>
        <source>told</source>
        <translation>eingetragen</translation>
    </message>
    <message>
        <source>not told: alerts sound at any hour</source>
        <translation>nicht eingetragen: Alarme tönen zu jeder Stunde</translation>
    </message>
    <message>
        <source>1 at work here</source>
        <translation>1 Person arbeitet hier</translation>
    </message>
    <message numerus="yes">
        <source>%n at work here</source>
        <translation>
            <numerusform>%n Person arbeitet hier</numerusform>
            <numerusform>%n Leute arbeiten hier</numerusform>
        </translation>
    </message>
    <message>
        <source>1 place</source>
        <translation>1 Ort</translation>
    </message>
    <message numerus="yes">
        <source>%n places</source>
        <translation>
            <numerusform>%n Ort</numerusform>
            <numerusform>%n Orte</numerusform>
        </translation>
    </message>
    <message>
        <source>off</source>
        <translation>aus</translation>
    </message>
    <message>
        <source>no device takes it</source>
        <translation>kein Gerät nimmt ihn an</translation>
    </message>
    <message>
        <source>was heard</source>
        <translation>wurde gehört</translation>
    </message>
    <message>
        <source>not tried yet</source>
        <translation>noch nicht versucht</translation>
    </message>
    <message>
        <source>was not heard</source>
        <translation>wurde nicht gehört</translation>
    </message>
    <message>
        <source>checked with a card</source>
        <translation>mit einer Karte geprüft</translation>
    </message>
    <message>
        <source>as the screen says</source>
        <translation>wie der Bildschirm sagt</translation>
    </message>
    <message>
        <source>no pedal</source>
        <translation>kein Pedal</translation>
    </message>
    <message>
        <source>pedal: %1</source>
        <translation>Pedal: %1</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keine</translation>
    </message>
    <message>
        <source>last one %1</source>
        <translation>letzte %1</translation>
    </message>
    <message>
        <source>Times rise and do not overlap: 09:00-12:30 13:00-17:30</source>
        <translation>Zeiten steigen und überschneiden sich nicht: 09:00-12:30 13:00-17:30</translation>
    </message>
    <message>
        <source>A date such as 2026-12-24, and times that rise: 09:00-12:30</source>
        <translation>Ein Datum wie 2026-12-24, und Zeiten, die steigen: 09:00-12:30</translation>
    </message>
    <message>
        <source>A name is needed.</source>
        <translation>Ein Name ist nötig.</translation>
    </message>
    <message>
        <source>A place needs a name.</source>
        <translation>Ein Ort braucht einen Namen.</translation>
    </message>
    <message>
        <source>A whole number, or nothing for as many as you like.</source>
        <translation>Eine ganze Zahl, oder nichts für so viele Sie wollen.</translation>
    </message>
    <message>
        <source>%1: closed</source>
        <translation>%1: geschlossen</translation>
    </message>
    <message>
        <source>Words on papers</source>
        <translation>Worte auf Papieren</translation>
    </message>
    <message>
        <source>as they ship</source>
        <translation>wie mitgeliefert</translation>
    </message>
    <message>
        <source>%1 of them your own</source>
        <translation>%1 davon eigene</translation>
    </message>
    <message>
        <source>Owners from a list</source>
        <translation>Eigentümer aus einer Liste</translation>
    </message>
    <message>
        <source>out of a phone or an address book</source>
        <translation>aus Telefon oder Adressbuch</translation>
    </message>
</context>
<context>
    <name>mend::app::SpacesLink</name>
    <message>
        <source>Log</source>
        <translation>Tagebuch</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Regeln</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Taken back: %1</source>
        <translation>Zurückgenommen: %1</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>never</source>
        <translation>nie</translation>
    </message>
    <message>
        <source>%1 mix: stiff %2 instead of %3</source>
        <translation>Ansatz %1: steif %2 statt %3</translation>
    </message>
</context>
<context>
    <name>mend::app::WhileAwaySpace</name>
    <message>
        <source>While nobody looked</source>
        <translation>Während niemand hinsah</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>Nothing is left to answer.</source>
        <translation>Nichts ist mehr zu beantworten.</translation>
    </message>
    <message>
        <source>Over meanwhile</source>
        <translation>Inzwischen vorbei</translation>
    </message>
    <message>
        <source>To the bench</source>
        <translation>Zum Werktisch</translation>
    </message>
    <message>
        <source>what is left open counts to the safe side</source>
        <translation>was offen bleibt, zählt zur sicheren Seite</translation>
    </message>
    <message>
        <source>Can still be saved</source>
        <translation>Noch zu retten</translation>
    </message>
    <message>
        <source>What closed or opened</source>
        <translation>Was sich schloss oder öffnete</translation>
    </message>
    <message>
        <source>Did it stay warm?</source>
        <translation>Blieb es warm?</translation>
    </message>
    <message>
        <source>Where nobody knows, waits are credited with the room and closings with the full heat.</source>
        <translation>Wo es niemand weiß, wird Warten mit Raumwärme und Schließen mit voller Wärme gerechnet.</translation>
    </message>
    <message>
        <source>It stayed on</source>
        <translation>Es blieb an</translation>
    </message>
    <message>
        <source>It went off</source>
        <translation>Es ging aus</translation>
    </message>
    <message>
        <source>I do not know</source>
        <translation>Ich weiß es nicht</translation>
    </message>
    <message>
        <source>What did the thermometers keep?</source>
        <translation>Was zeigten die Thermometer?</translation>
    </message>
    <message>
        <source>Waits are given the lowest, closings the highest.</source>
        <translation>Warten bekommt das Tiefste, Schließen das Höchste.</translation>
    </message>
    <message>
        <source>°F</source>
        <translation>°F</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>%1: lowest</source>
        <translation>%1: tiefste</translation>
    </message>
    <message>
        <source>%1: highest</source>
        <translation>%1: höchste</translation>
    </message>
    <message>
        <source>So it was</source>
        <translation>So war es</translation>
    </message>
    <message>
        <source>Not read</source>
        <translation>Nicht gemessen</translation>
    </message>
    <message>
        <source>The highest is below the lowest: are they the wrong way round?</source>
        <translation>Das Höchste liegt unter dem Tiefsten: sind sie vertauscht?</translation>
    </message>
    <message>
        <source>Two temperatures are needed, the lowest and the highest.</source>
        <translation>Zwei Temperaturen sind nötig, die tiefste und die höchste.</translation>
    </message>
</context>
<context>
    <name>mend::parts::LetterPad</name>
    <message>
        <source>Letters</source>
        <translation>Buchstaben</translation>
    </message>
    <message>
        <source>Capital</source>
        <translation>Großbuchstaben</translation>
    </message>
    <message>
        <source>123</source>
        <translation>123</translation>
    </message>
    <message>
        <source>äéø</source>
        <translation>äéø</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Fertig</translation>
    </message>
</context>
<context>
    <name>mend::parts::SheetSpace</name>
    <message>
        <source>Back to the list</source>
        <translation>Zurück zur Liste</translation>
    </message>
</context>
<context>
    <name>mend::parts::SignaturePad</name>
    <message>
        <source>Sign here with a finger, a pen or the mouse</source>
        <translation>Hier mit Finger, Stift oder Maus unterschreiben</translation>
    </message>
    <message>
        <source>Sign here</source>
        <translation>Hier unterschreiben</translation>
    </message>
</context>
</TS>
