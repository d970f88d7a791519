namespace PlankFit.Planking.Findings;

public enum Severity
{
    Note,
    Warning,
    Error,
}

/// <summary>Something a person should know: what it is about and what to do about it.</summary>
/// <remarks>Messages quote what stands in people's files: both texts are plain, so that a file cannot steer the terminal or the sheet that shows them.</remarks>
public sealed record Finding(Severity Severity, Subject About, string Message)
{
    public string Message
    {
        get;
        init => field = PlainText.Of(value);
    } = PlainText.Of(Message);

    /// <summary>What it is about in words, with file and line or cell where it has them.</summary>
    public string Where => PlainText.Of(About.ToString());
}
