## Why a note is no pair of lenses.

no-eye = it names no eye: write R or L before each lens
too-long = it is longer than { $longest } characters: that is no pair of lenses
before-eye = “{ $text }” stands before the first eye: begin with R or L
eye-twice = the { $eye } eye stands there twice
of-eye = { $eye } eye: { $why }
of-addition = addition: { $why }
additions = it has more than one addition for an eye
