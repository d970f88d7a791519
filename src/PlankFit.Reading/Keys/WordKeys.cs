using System.Collections.Immutable;

namespace PlankFit.Reading.Keys;

/// <summary>A text that the builder chose: a name, a file.</summary>
public sealed record TextKey(string Name, string Example, string What) : JobKey(Name, Example, What)
{
    /// <summary>What a message asks for where it is missing; with it the key is required.</summary>
    public string? AskedFor
    {
        get;
        init
        {
            field = value;
            Required = value is not null;
        }
    }

    public override string Kind => "text";
}

/// <summary>One of a few words.</summary>
public sealed record ChoiceKey<T>(
    string Name,
    ImmutableArray<(string Word, T Value)> Choices,
    string What
) : JobKey(Name, $"\"{Choices[^1].Word}\"", What)
    where T : struct
{
    public T? DefaultChoice { get; init; }

    public string Accepted => "accepted: " + Kind;

    public override string Kind => string.Join(" or ", Choices.Select(c => $"\"{c.Word}\""));

    public override string? Default =>
        DefaultChoice is { } usual
            ? $"\"{Choices.First(c => EqualityComparer<T>.Default.Equals(c.Value, usual)).Word}\""
            : Otherwise;

    public override ImmutableArray<string> Words => [.. Choices.Select(c => c.Word)];
}

/// <summary>true or false.</summary>
public sealed record YesNoKey(string Name, bool DefaultValue, string What)
    : JobKey(Name, DefaultValue ? "false" : "true", What)
{
    public override string Kind => "true or false";

    public override string? Default => DefaultValue ? "true" : "false";
}
