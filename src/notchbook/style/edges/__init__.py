"""How edges are drawn anew: what lengthening, widening, reshaping, necklines, armholes and hems share."""
