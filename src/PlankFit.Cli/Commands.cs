using System.CommandLine;
using PlankFit.App.Checking;
using PlankFit.App.Explaining;
using PlankFit.App.Gluing;
using PlankFit.App.Helping;
using PlankFit.App.Keels;
using PlankFit.App.Laying;
using PlankFit.App.Marking;
using PlankFit.App.Nesting;
using PlankFit.App.Running;
using PlankFit.App.Sheathing;
using PlankFit.App.Taping;
using PlankFit.Planking.Laying;

namespace PlankFit.Cli;

/// <summary>The verbs and their options.</summary>
internal static class Commands
{
    public static RootCommand Root()
    {
        var root = new RootCommand(
            "From the table of offsets of a hard-chine hull to every diagonal plank of its bottom and topsides, before a saw is lifted."
        );
        root.Add(
            Verb(
                "lay",
                "Work out every plank of every layer and write all that the bench needs.",
                LayRun.Run
            )
        );
        root.Add(
            Verb(
                "keel",
                "Hold the keel's layers against the planking: half-widths and bevels wanted and there, patterns, the cap.",
                KeelRun.Run
            )
        );
        root.Add(CompareCommand.Build());
        root.Add(
            Verb(
                "nest",
                "Lay the planks out in the boards on hand, or say what to buy: cut sheets, cut list, labels, offcuts. Ctrl-C ends the search and keeps the best plan.",
                NestRun.Run
            )
        );
        root.Add(
            Verb(
                "glue",
                "Plan resin and glue: what to order, batches by pot and film on the day's temperature, sessions, hold points, cards to mix by.",
                GlueRun.Run
            )
        );
        root.Add(
            Verb(
                "trust",
                "Tell how sure every plank is by [trust] and the tape, which few readings would make them surer, and what may be sawn now.",
                TrustRun.Run
            )
        );
        root.Add(
            Verb(
                "sheathe",
                "Lay the cloths of [[sheathing]]: how each lies and is cut from its roll, and the lines to draw before wetting out.",
                SheatheRun.Run
            )
        );
        root.Add(Check());
        root.Add(Explain());
        root.Add(Cut());
        root.Add(Help());
        return root;
    }

    /// <summary>One that takes what every verb takes and no more.</summary>
    private static Command Verb(
        string name,
        string what,
        Func<RunRequest, IProgress<PlanProgress>, Timings, CancellationToken, RunReport> run
    )
    {
        var common = new CommonOptions();
        var verb = new Command(name, what);
        common.AddTo(verb);
        verb.SetAction(parsed => Terminal.Run(common, parsed, run));
        return verb;
    }

    private static Command Check()
    {
        var common = new CommonOptions();
        var fair = new Option<string?>("--fair")
        {
            Description =
                "Write a faired copy of the table beside the old one: no value moved by more than this (\"1 mm\", \"1/32 in\").",
            HelpName = "TOLERANCE",
        };
        var check = new Command(
            "check",
            "Check the job and the fairness of its table of offsets, and draw its lines."
        );
        common.AddTo(check);
        check.Add(fair);
        check.SetAction(parsed =>
        {
            string? tolerance = parsed.GetValue(fair);
            return Terminal.Run(
                common,
                parsed,
                (request, _, timings, stop) => CheckRun.Run(request, tolerance, timings, stop)
            );
        });
        return check;
    }

    private static Command Cut()
    {
        var common = new CommonOptions();
        var planks = new Argument<string[]>("PLANKS")
        {
            Description = "The planks that are sawn: S1-08 S1-09, or a run, S1-08..S1-12.",
            Arity = ArgumentArity.OneOrMore,
        };
        var cut = new Command(
            "sawn",
            "Mark planks as sawn: their shapes are written down beside the job, and no later lay-out moves or renumbers them."
        );
        var forget = new Option<bool>("--forget")
        {
            Description = "Take them off the record: spoiled, or to be sawn anew.",
        };
        common.AddTo(cut);
        cut.Add(planks);
        cut.Add(forget);
        cut.SetAction(parsed =>
        {
            string[] named = parsed.GetValue(planks)!;
            bool off = parsed.GetValue(forget);
            return Terminal.Run(
                common,
                parsed,
                (request, progress, timings, stop) =>
                    off
                        ? SawnRun.Forget(request, named, progress, stop)
                        : SawnRun.Run(request, named, progress, timings, stop)
            );
        });
        return cut;
    }

    private static Command Help()
    {
        var name = new Argument<string?>("TOPIC")
        {
            Description =
                "A topic, such as keel; a table of the job file, such as layer; or a key, such as layer.width.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var manual = new Option<string?>("--manual")
        {
            Description = "Write all topics as a book into this PDF file.",
        };
        var help = new Command(
            "help",
            "Tell how a thing is done, with an example, and what may stand in a job file for it."
        );
        help.Add(name);
        help.Add(manual);
        help.SetAction(parsed =>
            Terminal.Say(
                parsed.GetValue(manual) is { } file
                    ? HelpRun.Manual(file)
                    : HelpRun.Run(parsed.GetValue(name))
            )
        );
        return help;
    }

    private static Command Explain()
    {
        var common = new CommonOptions();
        var plank = new Argument<string>("PLANK")
        {
            Description = "The plank's id, such as S1-07.",
        };
        var explain = new Command(
            "explain",
            "Tell how one plank came to be, from the offsets that bear on it to the line of its DXF file."
        );
        common.AddTo(explain);
        explain.Add(plank);
        explain.SetAction(parsed =>
        {
            string id = parsed.GetValue(plank)!;
            return Terminal.Run(
                common,
                parsed,
                (request, progress, timings, stop) =>
                    ExplainRun.Run(request, id, progress, timings, stop)
            );
        });
        return explain;
    }
}

/// <summary>What every verb takes: the job, where results go, JSON, timings.</summary>
internal sealed class CommonOptions
{
    private readonly Argument<string> job = new("JOB")
    {
        Description = "The job file, such as hulls/survey-launch/job.toml.",
    };
    private readonly Option<string?> output = new("--out")
    {
        Description = "Where results go; output/ and the name of the job's folder where left out.",
        HelpName = "DIR",
    };
    private readonly Option<bool> json = new("--json")
    {
        Description = "Print the result as JSON on standard output.",
    };
    private readonly Option<bool> timings = new("--timings")
    {
        Description = "Print how long each phase took.",
    };

    public void AddTo(Command command)
    {
        command.Add(job);
        command.Add(output);
        command.Add(json);
        command.Add(timings);
    }

    public RunRequest Request(ParseResult parsed) =>
        new(parsed.GetValue(job)!, parsed.GetValue(output), parsed.GetValue(json));

    public bool WantsTimings(ParseResult parsed) => parsed.GetValue(timings);
}
