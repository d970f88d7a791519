namespace PlankFit.Reading.Offsets;

/// <summary>A table of offsets that somebody is mending: its text stands for the file's wherever a job names that file.</summary>
/// <param name="File">As the job names it.</param>
public sealed record TableInHand(string File, string Text);
