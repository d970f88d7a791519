using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Draughting.Svg;
using PlankFit.Export.Solids;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Text;

namespace PlankFit.Pages.Answers;

/// <summary>What is known of a hull that lies nowhere yet.</summary>
/// <param name="Typed">By the addresses of the job's values, as NewJob has them; those that nobody has answered are left out or empty.</param>
internal sealed record NewHullAsked(
    string? Table,
    IReadOnlyDictionary<string, string>? Typed,
    int Layers
)
{
    /// <summary>Of the folder that it is to be kept in.</summary>
    public string? Folder { get; init; }

    /// <summary>What must be answered before anything can be laid, with the words that ask for it.</summary>
    public static readonly ImmutableArray<(string Address, string Words)> Needed =
    [
        ("job.units", "what its lengths are in"),
        ("hull.keel", "which line is the keel's"),
        ("hull.chine", "which line is the chine"),
        ("layer[0].thickness", "how thick a plank is"),
        ("layer[0].width", "how wide the stock is"),
    ];

    public ImmutableArray<string> Missing =>
        [
            .. string.IsNullOrWhiteSpace(Table) ? ["the table"] : (string[])[],
            .. Needed
                .Where(n => string.IsNullOrWhiteSpace(Typed?.GetValueOrDefault(n.Address)))
                .Select(n => n.Words),
        ];

    /// <summary>The job's text; null where what was typed is no value, or asks for what such a job has not.</summary>
    public string? JobText =>
        NewJob.Of(
            (Typed ?? new Dictionary<string, string>())
                .Where(t => !string.IsNullOrWhiteSpace(t.Value))
                .ToDictionary(t => t.Key, t => InInches(t.Key, t.Value.Trim())),
            Layers
        );

    /// <summary>A size of stock without a unit, 3/8 or 6, where lengths are feet, inches and eighths, in which a bare number means nothing: a yard tells it in inches.</summary>
    private string InInches(string address, string typed) =>
        Typed?.GetValueOrDefault("job.units") == "ft-in-8"
        && (
            address.EndsWith(".thickness", StringComparison.Ordinal)
            || address.EndsWith(".width", StringComparison.Ordinal)
        )
        && typed.All(c => char.IsAsciiDigit(c) || c is ' ' or '/' or '.')
            ? $"{typed} in"
            : typed;
}

/// <summary>What comes of a new hull's table and answers, as far as they go.</summary>
/// <param name="Missing">What is still to be answered; empty where planks were laid, or could not be.</param>
/// <param name="Skins">The planks; null where none are laid.</param>
/// <param name="Picture">A drawing of them; null where none are laid.</param>
internal sealed record NewHullAnswer(
    TableAnswer Table,
    TableGuess Guess,
    ImmutableArray<string> Missing,
    ImmutableArray<FindingAnswer> Found,
    SkinsAnswer? Skins,
    string? Picture
)
{
    /// <summary>The sheet of the picture, mm.</summary>
    private const double WidthMm = 320;
    private const double HeightMm = 160;

    private static readonly Sight FromAhead = new(35, 30, false);

    /// <param name="folder">Where it would lie: only a name, in which nothing is.</param>
    public static NewHullAnswer Of(NewHullAsked asked, string folder, CancellationToken stop)
    {
        var cells = TableCells.Of(asked.Table ?? "");
        var guess = TableGuess.Of(cells);
        if (FileLook.Mistaken(asked.Table ?? "", FileForm.Offsets, NewJob.Table) is { } mistaken)
        {
            Finding told = new(Severity.Error, NewJob.Table, mistaken);
            return new(
                TableAnswer.Of(NewJob.Table, cells, []),
                guess,
                [],
                [FindingAnswer.Of(told)],
                null,
                null
            );
        }

        ImmutableArray<string> missing = asked.Missing;
        if (missing.Length > 0 || asked.JobText is not { } job)
        {
            return new(
                TableAnswer.Of(NewJob.Table, cells, []),
                guess,
                missing.Length > 0 ? missing : ["values that are numbers"],
                [],
                null,
                null
            );
        }

        var shown = ShownJob.Of(folder, job, asked.Table!, NewJob.Table, stop);
        LaidPlanks? laid = shown.Plan is { } plan ? new(0, plan) : null;
        return new(
            TableAnswer.Of(NewJob.Table, cells, shown.Findings),
            guess,
            [],
            [.. FindingsText.GravestFirst(shown.Findings).Select(FindingAnswer.Of)],
            laid is null ? null : FactsAnswer.Skins(laid),
            laid is null ? null : Drawn(laid)
        );
    }

    private static string Drawn(LaidPlanks laid)
    {
        using var stream = new MemoryStream();
        SvgWriter.Write(
            stream,
            TurnedView.Of(
                laid.Plan.Job.Name,
                laid.Solids,
                FromAhead,
                (WidthMm, HeightMm),
                _ => true
            )
        );
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }
}
