using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Keys;

/// <summary>A list, with how many entries it may have.</summary>
public abstract record ListKey(string Name, string Example, string What)
    : JobKey(Name, Example, What)
{
    public int Most { get; init; } = Bounds.Entries;

    public override string? LimitWords =>
        string.Create(CultureInfo.InvariantCulture, $"up to {Most} entries");
}

/// <summary>A list of texts.</summary>
public sealed record TextsKey(string Name, string Example, string What)
    : ListKey(Name, Example, What)
{
    public override string Kind => "list of texts";
}

/// <summary>A text, or a list of texts.</summary>
public sealed record FilesKey(string Name, string Example, string What)
    : ListKey(Name, Example, What)
{
    public override string Kind => "text, or list of texts";
}

/// <summary>A list of lengths greater than nought.</summary>
public sealed record LengthsKey(string Name, string Example, string What)
    : ListKey(Name, Example, What)
{
    public override string Kind => "list of lengths";
}

/// <summary>A list of positions or heights, of either sign.</summary>
public sealed record PlacesKey(string Name, string Example, string What)
    : ListKey(Name, Example, What)
{
    public override string Kind => "list of positions";
}

/// <summary>Amounts on an area: numbers of grams a square metre, or texts with a mass on an area or with how far a volume goes.</summary>
public sealed record RatesKey(string Name, string Example, string What)
    : ListKey(Name, Example, What)
{
    /// <summary>That each is held to, g/m².</summary>
    public required Limits Limits { get; init; }

    /// <summary>The end of every message about it.</summary>
    public required string Accepted { get; init; }

    public override string Kind => "list of amounts on an area";
}

/// <summary>A list of plain numbers: angles, parts.</summary>
/// <param name="Unit">What each is, in words: degrees, parts of 1.</param>
public sealed record NumbersKey(string Name, string Example, string Unit, string What)
    : ListKey(Name, Example, What)
{
    /// <summary>That each is held to.</summary>
    public required Limits Limits { get; init; }

    /// <summary>The end of every message about it.</summary>
    public required string Accepted { get; init; }

    /// <summary>That an entry may carry in a text instead, each with what it is worth; empty where numbers are plain.</summary>
    public ImmutableArray<(string Unit, double Factor)> Units { get; init; } = [];

    public override string Kind =>
        $"list of {Unit}" + (Units.IsEmpty ? "" : ", or of texts with their unit");
}
