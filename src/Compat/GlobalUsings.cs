global using Compat.Answers;
global using Compat.Deciding;
global using Compat.Model;
global using Compat.Planning;
global using Compat.Reaching;
global using Compat.Space;
