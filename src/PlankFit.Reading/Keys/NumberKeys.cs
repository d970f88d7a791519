using System.Collections.Immutable;
using PlankFit.Planking.Units;

namespace PlankFit.Reading.Keys;

/// <summary>A length: a number in the job's units, or a text with its own.</summary>
public sealed record LengthKey(string Name, string Example, string What)
    : JobKey(Name, Example, What)
{
    public Limits Limits { get; init; } = Limits.None;

    /// <summary>Said where the limits are not kept, with {least} and {most}.</summary>
    public string Beyond { get; init; } = "must be greater than {least}";

    public Likely? Likely { get; init; }

    /// <summary>Where it is left out, mm.</summary>
    public double? DefaultMm { get; init; }

    public override string Kind => "length";

    public override string? Default => DefaultMm is { } mm ? Metric(mm) : Otherwise;

    public override string? LimitWords => Limits.InWords(mm => mm == 0 ? "0" : Metric(mm));

    public override string? LikelyWords => Likely?.InWords(Metric);

    internal string BeyondIn(LengthUnit units) =>
        Limits.Into(Beyond, mm => mm == 0 ? "0" : LengthText.ForPaper(mm, units, RoundTo.Up));

    private static string Metric(double mm) => LengthText.FormatExact(mm, LengthUnit.Millimetre);
}

/// <summary>A plain number: an angle, a count, a part, percent; where it has units, one that may carry another of them in a text.</summary>
/// <param name="Unit">What is counted, in words: degrees, percent.</param>
public sealed record NumberKey(string Name, string Example, string Unit, string What)
    : JobKey(Name, Example, What)
{
    public Limits Limits { get; init; } = Limits.None;

    /// <summary>That it may carry in a text instead, each with what it is worth; empty where it is plain.</summary>
    public ImmutableArray<(string Unit, double Factor)> Units { get; init; } = [];

    /// <summary>Only whole numbers.</summary>
    public bool Whole { get; init; }

    /// <summary>The end of every message about it, with {least} and {most}.</summary>
    public string AcceptedWords { get; init; } = "accepted: {least} to {most}";

    /// <summary>Said before <see cref="Accepted"/> where the limits are not kept.</summary>
    public string Beyond { get; init; } = "";

    public Likely? Likely { get; init; }

    public double? DefaultValue { get; init; }

    public string Accepted => Limits.Into(AcceptedWords, Limits.Plain);

    public override string Kind => Unit + (Units.IsEmpty ? "" : ", or text with its unit");

    public override string? Default => DefaultValue is { } value ? Limits.Plain(value) : Otherwise;

    public override string? LimitWords => Limits.InWords(Limits.Plain);

    public override string? LikelyWords => Likely?.InWords(Limits.Plain);

    internal bool Holds(double value) =>
        Limits.Hold(value) && (!Whole || value == Math.Floor(value));
}

/// <summary>A number in the first of its units, or a text with one of them: "540 kg/m3".</summary>
/// <param name="Units">Each with what it is worth in the first.</param>
public sealed record QuantityKey(
    string Name,
    string Example,
    ImmutableArray<(string Unit, double Factor)> Units,
    string What
) : JobKey(Name, Example, What)
{
    public required Limits Limits { get; init; }

    public required string Accepted { get; init; }

    public required Likely Likely { get; init; }

    public override string Kind => $"number of {Units[0].Unit}, or text with its unit";

    public override string? LimitWords => Limits.InWords(Limits.Plain);

    public override string? LikelyWords => Likely.InWords(Limits.Plain);
}
