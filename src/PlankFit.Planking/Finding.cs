namespace PlankFit.Planking;

public enum Severity
{
    Note,
    Warning,
    Error,
}

/// <summary>Something a person should know: where (file and line or cell, plank, layer) and what to do about it.</summary>
public sealed record Finding(Severity Severity, string Where, string Message);
