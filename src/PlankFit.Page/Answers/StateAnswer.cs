using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Keys;

namespace PlankFit.Pages.Answers;

/// <summary>A field of the job, as the page shows it.</summary>
internal sealed record FieldAnswer(string Address, string Table, string Name, string? Written)
{
    /// <summary>What sort of value it takes, in the words of the manual.</summary>
    public required string Kind { get; init; }

    /// <summary>How it is entered: number, choice, or text.</summary>
    public required string Sort { get; init; }

    /// <summary>Those that it takes; empty where it is no choice.</summary>
    public required ImmutableArray<string> Words { get; init; }

    public required string What { get; init; }

    public string? Limits { get; init; }

    /// <summary>What holds where it is left out.</summary>
    public string? Usual { get; init; }

    public int Line { get; init; }

    /// <summary>A length in the units that are shown, where these are not the job's own.</summary>
    public string? Shown { get; init; }

    public static FieldAnswer Of(JobField field) =>
        new(field.Address, field.Table, field.Key.Name, field.Written)
        {
            Kind = field.Key.Kind,
            Sort = field.Key switch
            {
                LengthKey or NumberKey or QuantityKey => "number",
                YesNoKey => "choice",
                { Words.IsEmpty: false } => "choice",
                _ => "text",
            },
            Words = field.Key is YesNoKey ? ["true", "false"] : field.Key.Words,
            What = field.Key.What,
            Limits = field.Key.LimitWords,
            Usual = field.Key.Default,
            Line = field.Line,
        };
}

/// <summary>Something that a person should know, in the words of the sheets.</summary>
internal sealed record FindingAnswer(string Rank, string Words, string? Plank)
{
    public static FindingAnswer Of(Finding finding) =>
        new(
            FindingsText.Of(finding.Rank),
            FindingsText.Words(finding),
            finding.About.Plank?.ToString()
        );
}

/// <summary>What stands at this moment; everything else is asked for by the turn that is named here.</summary>
/// <param name="Turn">Of the newest text.</param>
/// <param name="Tried">The newest text that was laid, or could not be.</param>
/// <param name="Laid">What the picture is of; null before anything could be laid.</param>
internal sealed record StateAnswer(string Epoch, int Turn, int Tried, int? Laid)
{
    /// <summary>The job's own id: its number may be another's when the server is started elsewhere.</summary>
    public required string Job { get; init; }

    public required string Text { get; init; }

    public required bool Saved { get; init; }

    public required ImmutableArray<FieldAnswer> Fields { get; init; }

    public required ImmutableArray<FindingAnswer> Faults { get; init; }

    /// <summary>What undoing takes back; null where there is nothing.</summary>
    public string? Undo { get; init; }

    public string? Redo { get; init; }

    /// <param name="units">In which lengths are shown: mm, or ft for feet and inches; null for the job's own.</param>
    /// <param name="of">The run of the server, and the job's own id.</param>
    public static StateAnswer Of((string Epoch, string Job) of, Seen seen, string? units) =>
        new(of.Epoch, seen.Turn, seen.Tried, seen.Good?.Turn)
        {
            Job = of.Job,
            Text = seen.History.Present.Text,
            Saved = seen.IsSaved,
            Fields = FieldsOf(JobFields.Of(seen.History.Present.Text), units),
            Faults = [.. FindingsText.GravestFirst(seen.Faults).Select(FindingAnswer.Of)],
            Undo = seen.History.Past.IsEmpty ? null : seen.History.Present.Done,
            Redo = seen.History.Future.IsEmpty ? null : seen.History.Future.Peek().Done,
        };

    private static ImmutableArray<FieldAnswer> FieldsOf(
        ImmutableArray<JobField> fields,
        string? units
    )
    {
        LengthUnit? written = ShownLength.Written(fields);
        LengthUnit? shown =
            units is "mm" or "ft" && written is { } own
                ? ShownLength.Unit(own, units == "mm", inchesAlone: false)
                : null;
        return
        [
            .. fields.Select(f =>
                FieldAnswer.Of(f) with
                {
                    Shown =
                        shown is { } unit
                        && LengthUnits.IsMetric(unit) != LengthUnits.IsMetric(written!.Value)
                            ? ShownLength.Of(f, written.Value, unit)
                            : null,
                }
            ),
        ];
    }
}
