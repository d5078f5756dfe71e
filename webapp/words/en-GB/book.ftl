none-found = No wearer is called that. Try fewer letters, or a colour from their wishes.
colors = Colours
