## Gewichte, und was an jeder Seite der Stange zu tun ist. Darunter ist eine Seite gezeichnet.

# Das einzige Gewicht, nach dem gefragt ist, und die Scheiben einer Seite.
only-load = { $load }: { $build }
# $change ist, was an jeder Seite zu tun ist: „5 kg auflegen“.
step = { $load }: { $change }
warm-up-step = { $load } × { $reps }, Aufwärmen: { $change }
# Gleiche Scheiben, auf der Zeichnung gezählt: „1,25×4“.
several = { $plate }×{ $plates }
