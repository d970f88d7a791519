using System.CommandLine;
using System.CommandLine.Parsing;
using PlankFit.App.Running;
using PlankFit.Cli;
using PlankFit.Planking.Findings;

// A run that cannot say what it found does nothing: a finding that nobody is told of may cost a plank.
(ShellStream Output, ShellStream Errors)? shell = ShellStream.Open();
if (shell is { Errors.IsClosed: true })
{
    return (int)ExitCode.CouldNotWrite;
}

if (shell is { Output.IsClosed: true } && args.Contains("--json"))
{
    return Terminal.CouldNotSay(new("standard output is closed, and --json asks for it"));
}

// The command line only builds a request and calls the application with it.
Console.SetError(new PlainWriter(Console.Error));
RootCommand root = Commands.Root();
ParseResult parsed = root.Parse(args);
try
{
    if (parsed.Errors.Count > 0)
    {
        foreach (ParseError error in parsed.Errors)
        {
            Console.Error.WriteLine($"plankfit: {PlainText.Of(error.Message)}");
        }

        string asked =
            parsed.CommandResult.Command is RootCommand
                ? ""
                : parsed.CommandResult.Command.Name + " ";
        Console.Error.WriteLine($"plankfit: see plankfit {asked}--help");
        return (int)ExitCode.WrongUsage;
    }

    return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
}
catch (LostStreamException lost)
{
    return Terminal.CouldNotSay(lost);
}
