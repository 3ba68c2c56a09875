## Warum eine Notiz kein Paar Gläser ist.

no-eye = sie nennt kein Auge: schreiben Sie R oder L vor jedes Glas
too-long = sie ist länger als { $longest } Zeichen: das ist kein Paar Gläser
before-eye = „{ $text }“ steht vor dem ersten Auge: beginnen Sie mit R oder L
eye-twice = ein Auge steht zweimal da: { $eye }
of-eye = Auge { $eye }: { $why }
of-addition = Nahzusatz: { $why }
additions = sie hat mehr als einen Nahzusatz für ein Auge
