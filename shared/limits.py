"""How large a job may be. A job beyond these limits is a slip of the finger or a trap: an error refuses it in words.

`shared.checks.job` holds jobs to them.
"""

LONGEST_MM = 100_000.0
"""The greatest distance of a corner from the origin of its face, and the greatest length read: 100 m."""

THICKEST_MM = 1_000.0
"""The greatest thickness of a board, and the greatest leg, width or depth of a bead."""

THINNEST_BEAD_MM = 0.1
"""The least leg, width or depth of a bead: no nozzle draws a thinner one (common practice, no source)."""

SMALLEST_PROFILE_FACTOR = 0.01
GREATEST_PROFILE_FACTOR = 10.0

HIGHEST_LEVEL = 1_000

MOST_PARTS = 20_000
MOST_FACES = 1_000
MOST_ROOMS = 200
MOST_FINISHES = 500
MOST_JOINT_CHOICES = 20_000
MOST_TIES = 2_000
"""Ties of all plans together: each is compared with every other along its wall."""

MOST_VERTICES = 2_000
"""Corners of one outline."""

MOST_CORNERS = 200_000
"""Corners of all outlines of a job: ten for each of `MOST_PARTS`."""

LONGEST_TEXT = 500
"""Characters of a name, or of what a part is made of."""

LONGEST_ID = 64
"""Characters of an id."""

LONGEST_QUOTED = 40
"""Characters of a person's text that an error repeats."""

MOST_READINGS = 500
"""Readings of one face."""

MOST_READINGS_OF_A_JOB = 20_000
"""Readings of all faces together: those of a hundred faces, each with 200."""

MOST_OF_A_LINE = 200
"""Readings of one typed line."""

SMALLEST_TILE_MM = 5.0
"""The smallest side of a tile: mosaic."""

THICKEST_GROUT_MM = 50.0

MOST_PHOTO_DOTS = 100_000
"""The greatest distance of a mark on a photo from its corner, in dots."""

MOST_PRODUCTS = 2_000
"""The greatest number of products, of packs of all products together, and of steps of all finishes together."""

MOST_STAND_INS = 50
"""Products with the same word in `stands_for`: each is reckoned for all the work of all of them."""

MOST_OF_A_PRODUCT = 1_000_000.0
"""Litres, metres, pieces, or square metres a litre: more than any pack holds and any kitchen needs."""

MOST_MONEY = 100_000_000.0
MOST_COATS = 50
MOST_HOURS = 10_000.0
MOST_HINGES = 50
HIGHEST_TAG = 99_999
MOST_ALIKE = 10_000

GREATEST_LOSS = 0.95
GREATEST_ALLOWANCE = 10.0
"""Both are shares: 0.1 is a tenth."""
