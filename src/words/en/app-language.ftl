## The choice of the language, in the settings and before the vault is open.

heading = Language
choose = the language of this tablet
only-here = This tablet only. The decimal mark follows the language unless you chose one.
