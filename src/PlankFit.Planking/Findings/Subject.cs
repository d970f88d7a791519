namespace PlankFit.Planking.Findings;

/// <summary>What a finding is about: a plank, a layer and perhaps one side of it, or a place in a person's files, in words.</summary>
public readonly record struct Subject
{
    private readonly string? words;

    private Subject(string words) => this.words = words;

    /// <summary>The plank; null where it is about something else.</summary>
    public PlankId? Plank { get; private init; }

    /// <summary>The layer's name; null where it is about something else.</summary>
    public string? Layer { get; private init; }

    /// <summary>The one side of the layer that it is about; null for both.</summary>
    public Side? Side { get; private init; }

    public static Subject OfPlank(PlankId plank) => new() { Plank = plank };

    public static Subject OfLayer(string name, Side? side = null) =>
        new() { Layer = name, Side = side };

    /// <summary>The key of the job to look at, with the tables that it lies in, such as layer.width: of that layer where it is about one. Null for none.</summary>
    public string? Key { get; init; }

    /// <summary>A file with its line or cell, a table of the job, a part of the boat.</summary>
    public static Subject Of(string words) => new(words);

    public static implicit operator Subject(PlankId plank) => OfPlank(plank);

    public static implicit operator Subject(string words) => Of(words);

    private string Sided =>
        Side switch
        {
            null => "",
            Findings.Side.Starboard => ", starboard",
            _ => ", port",
        };

    public override string ToString() =>
        Plank is { } plank ? plank.ToString()
        : Layer is { } layer ? $"layer {layer}{Sided}"
        : words ?? "";
}
