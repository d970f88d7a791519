using System.Text.Json.Serialization;
using PlankFit.Export.Checks;
using PlankFit.Planking.Findings;
using PlankFit.Reading.Editing;
using PlankFit.Reading.Text;

namespace PlankFit.App.Noting;

/// <summary>One thing that somebody noted of one plank, or of cloth and what else is laid, or read in one blank of the check sheet.</summary>
/// <param name="Client">The browser that it was noted in, by a name of its own making.</param>
/// <param name="N">Counts what that browser noted: the same one twice is the same note.</param>
/// <param name="Plank">Its number, or the name of what else is laid, as progress.csv has it (<see cref="LaidPart"/>); empty for a reading.</param>
/// <param name="Field">Of <see cref="ProgressField"/>; of a reading its blank, as <see cref="BlankId"/> has it.</param>
/// <param name="Value">Of a reading a length with its own unit; empty where it is taken back.</param>
/// <param name="Seen">The place in the journal of the newest that the browser knew of.</param>
/// <param name="At">When, by that browser's clock, as "2026-05-03 14:02".</param>
public sealed record ProgressTick(
    string Client,
    long N,
    string Plank,
    string Field,
    string Value,
    long Seen,
    string At
)
{
    /// <summary>Its place in the journal, from 1; given when it is written.</summary>
    public long Seq { get; init; }

    /// <summary>Of a reading: what it should have said by the sheet that it was read from, mm.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? ShouldMm { get; init; }

    /// <summary>Of a reading that another's stood in the way of: the blank that it was typed in, of which it is a further reading. Empty where it is another's, which this one took back unseen.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? TypedIn { get; init; }

    /// <summary>Its blank; null where it is no reading.</summary>
    [JsonIgnore]
    public BlankId? Blank => Plank.Length == 0 ? BlankId.Parse(Field) : null;
}

/// <summary>What is noted of a plank besides that it is sawn, which the record of sawn planks has.</summary>
public static class ProgressField
{
    /// <summary>How far it has come: fitted, glued, or neither.</summary>
    public const string State = "state";

    public const string Note = "note";

    /// <summary>What it lacks or has too much when it is offered up, in words: "3 mm short at chine".</summary>
    public const string Off = "off";

    public const int LongestText = 500;

    /// <summary>Why that will not do as a note; null where it will.</summary>
    public static string? Fault(ProgressTick tick) =>
        tick.Plank.Length > 0
            ? PlankId.Parse(tick.Plank) is not null
                ? Fault(tick.Field, tick.Value)
                : !LaidPart.IsName(tick.Plank)
                    ? "is no plank"
                    : tick.Field != State
                        ? Fault(tick.Field == Note ? Note : "", tick.Value)
                        : tick.Value.Length == 0 || LaidPart.MomentOf(tick.Value) is not null
                            ? null
                            : "it is laid, with day and hour as in \"laid 2026-05-03 14:02\", or it is not"
            : tick.Blank is null
                ? "the check sheet has no such blank"
                : tick.Value.Length > 0 && ShownLength.OfItsUnit(tick.Value) is null
                    ? $"{Quoted.Of(tick.Value)} is no length: type one as 1491 mm, 58 11/16 in or 4'-10 11/16\""
                    : tick.ShouldMm is { } should && !double.IsFinite(should)
                        ? "what it should have said is no length"
                        : null;

    /// <summary>Why that will not do as a value of the field; null where it will.</summary>
    private static string? Fault(string field, string value) =>
        field switch
        {
            State when value is "" or "fitted" or "glued" => null,
            State => "a plank is fitted, glued, or neither",
            Note or Off when value.Length > LongestText =>
                $"a note has up to {LongestText} letters",
            Note or Off when value.Any(char.IsControl) => "a note is one line",
            Note or Off => null,
            _ => "there is nothing of that name to note",
        };
}
