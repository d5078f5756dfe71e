
made-colors = colours by plan
