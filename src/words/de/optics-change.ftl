## Was sich zwischen zwei Gläsern geändert hat, und was davon einen Grund braucht.

ask-sphere = die Sphäre ändert sich um { $by } dpt: was ist der Grund? ({ $source })
stronger = stärker
weaker = schwächer
ask-cylinder = der Zylinder ist { $size } dpt { $way }: was ist der Grund? ({ $source })
ask-new-cylinder = ein Zylinder von { $cylinder } dpt ist neu: was ist der Grund? ({ $source })
ask-axis = eine schräge Achse dreht sich um { $degrees } Grad, das sind { $blur } dpt: was ist der Grund? ({ $source })
ask-apart = die Augen liegen { $by } dpt weiter auseinander als zuvor: was ist der Grund? ({ $source })
of-eye = { $eye }: { $sentence }
threshold-no-number = ein Schwellenwert ist eine Zahl ab 0, und { $value } ist keine
threshold-no-source = sagen Sie, woher der Schwellenwert stammt
no-change = keine Änderung
blur-in-all = insgesamt { $blur } dpt Unschärfe
toward-plus = Plus
toward-minus = Minus
sphere-toward = { $size } dpt Richtung { $way }, von { $from } auf { $to }
more-plus = mehr Plus
less-plus = weniger Plus
less-minus = weniger Minus
more-minus = mehr Minus
sphere-by = { $size } dpt { $way }
cylinder-new = neuer Zylinder { $cylinder }
cylinder-out = Zylinder { $cylinder } herausgenommen
cylinder-by = Zylinder { $size } dpt { $way }
degree = Grad
degrees = Grad
axis-round = Achse um { $degrees } { $unit } gedreht, das sind { $blur } dpt bei diesem Zylinder
