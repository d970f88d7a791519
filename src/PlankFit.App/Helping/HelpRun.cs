using System.Collections.Immutable;
using PlankFit.App.Running;
using PlankFit.Reading.Help;
using PlankFit.Reading.Text;

namespace PlankFit.App.Helping;

/// <summary>Tells what may stand in a job file.</summary>
public static class HelpRun
{
    /// <param name="name">A table or a key; null for all tables.</param>
    public static RunReport Run(string? name)
    {
        if (KeyHelp.Of(name) is { } lines)
        {
            return new(ExitCode.Done, [], [], string.Join('\n', lines) + "\n");
        }

        ImmutableArray<string> near = KeyHelp.Nearest(name!);
        string meant = near.IsEmpty
            ? ";"
            : $"; did you mean {string.Join(" or ", near.Select(Quoted.Of))}?";
        return new(
            ExitCode.WrongUsage,
            [],
            [
                $"plankfit: a job has no table and no key {Quoted.Of(name!)}{meant} plankfit help lists them all.",
            ]
        );
    }
}
