# Wo der Messfehler einer Beweglichkeitsmessung veröffentlicht ist.

sit-and-reach-source = Forward-Reach-Wert, J Sports Sci Med 2009;8(1):116-122, Tabelle 1
fingertip-to-floor-source = Ekedahl et al., Arch Phys Med Rehabil 2012;93:2210-2215
lunge-source = Ausfallschritt unter Belastung, ein Untersucher, Powden et al., Man Ther 2015;20:524-532
