using System.Text;
using Compat;
using Compat.Cli;

// The shipped data is read on another core while the arguments are parsed. What goes wrong is met again where the data is used.
if (args.Length > 1 && !args.Contains("--data")) _ = Task.Run(() => KnowledgeBase.Shipped);
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return CommandLine.Run(args, Console.Out, Console.Error);
