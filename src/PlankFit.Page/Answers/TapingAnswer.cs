using System.Collections.Immutable;
using PlankFit.App.Noting;
using PlankFit.Export.Checks;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Editing;

namespace PlankFit.Pages.Answers;

/// <param name="Name">Of its first reading, as the journal names it; the number at its end is another's for the others.</param>
/// <param name="Should">What the tape should say, as the sheet has it.</param>
/// <param name="Limit">Empty where there is none.</param>
internal sealed record BlankAnswer(
    string Name,
    string Where,
    string Should,
    double ShouldMm,
    string Limit,
    ImmutableArray<int> Times
)
{
    public string? Plank { get; init; }

    public double? X { get; init; }

    public string Note { get; init; } = "";

    /// <summary>The hull is adjusted to it once it is put into the file of what was measured.</summary>
    public bool TakenUp { get; init; }
}

internal sealed record BlankGroupAnswer(string Title, ImmutableArray<BlankAnswer> Blanks);

/// <summary>The blanks of the check sheet of what is laid.</summary>
/// <param name="Trusted">The job says how far table and tape are trusted, so that the hull is adjusted to readings.</param>
internal sealed record TapingAnswer(
    int Turn,
    bool Trusted,
    bool Metric,
    ImmutableArray<BlankGroupAnswer> Groups
)
{
    /// <summary>What is taken for a length without its unit, in words: bare numbers are feet.</summary>
    public required string Bare { get; init; }

    public static TapingAnswer Of(Laid laid)
    {
        Job job = laid.Plan.Job;
        return new(
            laid.Turn,
            job.Trust is not null,
            LengthUnits.IsMetric(job.Units),
            [
                .. TapingBook
                    .Sheet(laid.Plan)
                    .Select(g => new BlankGroupAnswer(
                        g.Title,
                        [.. g.Blanks.Select(b => Of(b, job.Units))]
                    )),
            ]
        )
        {
            Bare = ShownLength.Bare(job.Units, job.WrittenIn) switch
            {
                LengthUnit.Foot => "bare numbers are feet",
                LengthUnit.Inch => "bare numbers are inches",
                LengthUnit.FeetInchesEighths => "feet-inches-eighths as 4-10-5",
                var unit => $"bare numbers are {LengthUnits.Name(unit)}",
            },
        };
    }

    private static BlankAnswer Of(CheckBlank blank, LengthUnit unit) =>
        new(
            blank.Id.ToString(),
            blank.Where,
            LengthText.ForPaper(blank.ShouldMm, unit),
            blank.ShouldMm,
            blank.LimitMm is { } limit ? LengthText.ForPaper(limit, unit, RoundTo.Up) : "",
            blank.Times
        )
        {
            Plank = blank.Plank?.ToString(),
            X = blank.XMm,
            Note = blank.Note,
            TakenUp = blank.IsTakenUp,
        };
}

/// <param name="Name">Of the blank, with the number of the reading.</param>
/// <param name="Verdict">within, beyond, other for another lay-out's, or nothing.</param>
/// <param name="Put">It stands in the file of what was measured.</param>
internal sealed record ReadingAnswer(
    string Name,
    string Text,
    string Verdict,
    string Words,
    bool Put
)
{
    /// <summary>What it is of, where the sheet has no blank for it.</summary>
    public string? Where { get; init; }
}

/// <param name="Newest">The place of the newest note that they are taken from.</param>
/// <param name="ToPut">How many the file of what was measured would have that it has not.</param>
internal sealed record ReadingsAnswer(
    int Turn,
    long Newest,
    int ToPut,
    ImmutableArray<ReadingAnswer> Readings
)
{
    /// <summary>How many stand in the file of what was measured that hold no more.</summary>
    public int ToTakeOut { get; init; }

    public static ReadingsAnswer Of(Laid laid, TapingBook book)
    {
        Job job = laid.Plan.Job;
        ImmutableArray<BlankGroup> sheet = TapingBook.Sheet(laid.Plan);
        var blanks = new BlankSearch(sheet);
        ImmutableArray<ProgressTick> read = book.Readings;
        HashSet<string> put = book.InTheFile;
        string Mark(ProgressTick tick) => ProgressJournal.MarkOf(tick.Client, tick.N);
        return new(
            laid.Turn,
            read.Select(t => t.Seq).DefaultIfEmpty(0).Max(),
            TapedReadings.Of(laid.Plan, sheet, read, put).Rows.Length,
            [
                .. read.Where(t => t.Value.Length > 0)
                    .Select(t => Of(t, blanks, job, put.Contains(Mark(t)))),
            ]
        )
        {
            ToTakeOut = book.Gone(put),
        };
    }

    private static ReadingAnswer Of(ProgressTick tick, BlankSearch blanks, Job job, bool put)
    {
        BlankId id = tick.Blank!.Value;
        double mm = ShownLength.OfItsUnit(tick.Value)!.Value;
        // As it was typed where that is of the units that are shown.
        string text = Text(tick.Value, mm, job.Units);
        if (blanks.Of(id, tick.ShouldMm) is not { } blank)
        {
            return new(id.ToString(), text, "", "", put)
            {
                Where =
                    $"{id.What}, {id.Where}{(id.Side is { } side ? $", {PlankWords.Of(side)}" : "")}",
            };
        }

        if (put && !BlankJudge.IsOfThisLayOut(blank, tick.ShouldMm))
        {
            // By it, perhaps.
            return new(id.ToString(), text, "", "", put);
        }

        (BlankVerdict verdict, string words) = BlankJudge.Of(blank, mm, tick.ShouldMm, job.Units);
        return new(
            id.ToString(),
            text,
            verdict switch
            {
                BlankVerdict.Within => "within",
                BlankVerdict.Beyond => "beyond",
                BlankVerdict.OfAnotherLayOut => "other",
                _ => "",
            },
            words,
            put
        );
    }

    private static string Text(string value, double mm, LengthUnit shown) =>
        LengthUnits.IsMetric(shown) ? MeasuredWriting.Value(value, shown)
        : value.Contains('m', StringComparison.Ordinal) ? LengthText.ForPaper(mm, shown)
        : value;
}
