using System.Text;
using Compat.Cli;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return CommandLine.Run(args, Console.Out, Console.Error);
