"""Money as a person sees it: to the cent, with the word of its currency if one is given."""


def show_money(amount: float, currency: str = "", *, decimal: str = ".") -> str:
    """An amount of money: "24.90", or "24.90 crowns". Never "-0.00"."""
    return f"{round(amount, 2) + 0.0:.2f} {currency}".strip().replace(".", decimal, 1)
