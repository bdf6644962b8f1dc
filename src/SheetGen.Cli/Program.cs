using System.Globalization;
using System.Text;
using SheetGen.Cli;

CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);

var screen = Screen.OfProcess();
try
{
    return CommandLine.Run(args, screen);
}
catch (Exception e)
{
    screen.Error.WriteLine("sheetgen: the program is at fault, not your file; nothing was written.");
    screen.Error.WriteLine($"sheetgen: please report the project file, the command and these lines (version {ProgramVersion.Text}):");
    screen.Error.WriteLine(e);
    return ExitCode.Fault;
}
