# mpmath 1.4.1, Python 3. Command: python chi_square.py
# Rows for tables/chi_square.txt at 40 digits: the regularised lower incomplete gamma function, solved for its argument.
from mpmath import findroot, gammainc, mp, mpf, nstr

mp.dps = 40


def below(freedom, probability, guess):
    share = lambda x: gammainc(mpf(freedom) / 2, 0, x / 2, regularized=True) - mpf(probability)
    return nstr(findroot(share, guess), 10)


print("# Chi-square that chance stays below: parts or freedom | degrees of freedom | probability | chi-square | within | kind | source")
SOURCE = "reference | incomplete gamma function, mpmath 1.4.1 at 40 digits: reference/chi_square.py"
for freedom in (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 20, 30, 50, 100):
    within = "0.0005" if freedom <= 10 else "0.02"
    print(f"freedom | {freedom} | 0.95 | {below(freedom, '0.95', freedom + 2.5 * freedom ** 0.5)} | {within} | {SOURCE}")
for probability in ("0.5", "0.68", "0.9", "0.95", "0.99"):
    print(f"parts | 2 | {probability} | {below(2, probability, 3)} | 1e-8 | {SOURCE}")
