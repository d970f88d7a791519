using System.CommandLine;
using PlankFit.App.Comparing;

namespace PlankFit.Cli;

/// <summary>The verb `compare` and its options.</summary>
internal static class CompareCommand
{
    public static Command Build()
    {
        var common = new CommonOptions();
        var others = new Argument<string[]>("OTHERS")
        {
            Description = "Other job files, each held against JOB as it stands.",
            Arity = ArgumentArity.ZeroOrMore,
        };
        Option<string?> Range(string name, string what) =>
            new(name) { Description = what, HelpName = "VALUES" };
        Option<string?> angle = Range(
                "--angle",
                "Angles at the keel to try, degrees: 40..50, 40..50:2 with a step of its own, or 40,45,50."
            ),
            width = Range(
                "--width",
                "Widths of the stock to try, as the job writes lengths: 100,120,150."
            ),
            master = Range(
                "--master",
                "Places of the master plank to try, as the job writes positions."
            ),
            heads = Range(
                "--heads",
                "Which way planks head: aft,forward; of the first layer varied, the others keep crossing it."
            );
        var layers = new Option<string[]>("--layer")
        {
            Description =
                "The layer that is varied, by name or number; once for each. All planks of the bottom where none is named.",
            HelpName = "LAYER",
            Arity = ArgumentArity.OneOrMore,
        };
        var by = new Option<string?>("--by")
        {
            Description =
                "What lay-outs are held against each other by: planks,stock,waste,tapers,bend,gap,drift,boards.",
            HelpName = "FIGURES",
        };
        var chart = new Option<string?>("--chart")
        {
            Description = "What stands along the chart and up it, two of the same: planks,waste.",
            HelpName = "FIGURES",
        };
        var boards = new Option<int?>("--boards")
        {
            Description =
                "Make a plan of cutting of each lay-out as well, by so many rounds of its search; slow.",
            HelpName = "ROUNDS",
        };
        var compare = new Command(
            "compare",
            "Lay the job with other angles, widths, masters and headings, or beside other jobs, and show which lay-outs nothing beats. Ctrl-C keeps what is found."
        );
        common.AddTo(compare);
        compare.Add(others);
        foreach (
            Option option in new Option[] { angle, width, master, heads, layers, by, chart, boards }
        )
        {
            compare.Add(option);
        }

        compare.SetAction(parsed =>
        {
            var asked = new CompareAsked
            {
                Angle = parsed.GetValue(angle),
                Width = parsed.GetValue(width),
                Master = parsed.GetValue(master),
                Heads = parsed.GetValue(heads),
                Layers = [.. parsed.GetValue(layers) ?? []],
                By = parsed.GetValue(by),
                Chart = parsed.GetValue(chart),
                BoardRounds = parsed.GetValue(boards),
                Others = [.. parsed.GetValue(others) ?? []],
            };
            return Terminal.Run(
                common,
                parsed,
                (request, progress, timings, stop) =>
                    CompareRun.Run(request, asked, progress, timings, stop)
            );
        });
        return compare;
    }
}
