{ using lock = open(); }
