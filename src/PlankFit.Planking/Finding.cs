namespace PlankFit.Planking;

public enum Severity
{
    Note,
    Warning,
    Error,
}

/// <summary>Something a person should know: where (file and line or cell, plank, layer) and what to do about it.</summary>
/// <remarks>Messages quote what stands in people's files: both texts are plain, so that a file cannot steer the terminal or the sheet that shows them.</remarks>
public sealed record Finding(Severity Severity, string Where, string Message)
{
    public string Where
    {
        get;
        init => field = PlainText.Of(value);
    } = PlainText.Of(Where);

    public string Message
    {
        get;
        init => field = PlainText.Of(value);
    } = PlainText.Of(Message);
}
