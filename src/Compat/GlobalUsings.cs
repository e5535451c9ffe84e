global using Compat.Exposures;
