# Where the measurement error of a way to measure range of motion was published.

sit-and-reach-source = forward-reach score, J Sports Sci Med 2009;8(1):116-122, table 1
fingertip-to-floor-source = Ekedahl et al., Arch Phys Med Rehabil 2012;93:2210-2215
lunge-source = weight-bearing lunge, one rater, Powden et al., Man Ther 2015;20:524-532
