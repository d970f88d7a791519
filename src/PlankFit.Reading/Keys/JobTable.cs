using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Keys;

/// <summary>A table of the job file: its keys, in the order in which they are told.</summary>
public sealed record JobTable(params ImmutableArray<JobKey> Keys)
{
    public JobKey? Find(string name) => Keys.FirstOrDefault(k => k.Name == name);
}

/// <summary>A key whose value is a table.</summary>
public abstract record OfTablesKey(string Name, string Example, string What, JobTable Table)
    : JobKey(Name, Example, What);

/// <summary>[name], or name = { ... }.</summary>
/// <param name="Example">Within braces for one that is written so.</param>
public sealed record TableKey(string Name, string Example, string What, JobTable Table)
    : OfTablesKey(Name, Example, What, Table)
{
    /// <summary>As a table with a head of its own: [name].</summary>
    public static TableKey Headed(string head, string what, JobTable table) =>
        new(head.Split('.')[^1], "", what, table) { Head = head };

    /// <summary>The whole name in its head; null where it is written in braces.</summary>
    public string? Head { get; init; }

    public override string Line => Head is null ? base.Line : $"[{Head}]";

    public override string Kind => "table";
}

/// <summary>[[head]], as many as are wanted.</summary>
public sealed record TablesKey(string Head, string What, JobTable Table)
    : OfTablesKey(Head.Split('.')[^1], "", What, Table)
{
    public int Most { get; init; } = Bounds.Tables;

    public override string Line => $"[[{Head}]]";

    public override string Kind => "tables, one or several";

    public override string? LimitWords =>
        string.Create(CultureInfo.InvariantCulture, $"up to {Most}");
}

/// <summary>A key that takes a value of one form or a table, or tables: "mitre", or { line = "keel face" }.</summary>
public sealed record EitherKey(JobKey Plain, OfTablesKey Other, string What)
    : JobKey(Plain.Name, Plain.Example, What)
{
    public override string Kind => $"{Plain.Kind}, or {Other.Kind}";

    public override string? Default => Plain.Default ?? Otherwise;

    public override string? LimitWords => Plain.LimitWords;

    public override ImmutableArray<string> Words => Plain.Words;
}
