using System.CommandLine;
using PlankFit.App;
using PlankFit.Cli;
using PlankFit.Planking;

// The command line only builds a request and calls the application with it.
Console.SetError(new PlainWriter(Console.Error));
RootCommand root = Commands.Root();
ParseResult parsed = root.Parse(args);
if (parsed.Errors.Count > 0)
{
    foreach (var error in parsed.Errors)
    {
        Console.Error.WriteLine($"plankfit: {PlainText.Of(error.Message)}");
    }

    Console.Error.WriteLine("plankfit: see plankfit --help");
    return (int)ExitCode.WrongUsage;
}

return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
