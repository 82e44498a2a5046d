/** The title block of a sheet that carries nothing yet, in pencil. */
export function BlankTitleBlock() {
  return (
    <div className="title-block pencil" aria-hidden="true">
      <div className="tb-top">
        <div>
          <span className="label">Class</span>
          <p className="tb-class">&nbsp;</p>
        </div>
        <div>
          <span className="label">Sheet</span>
        </div>
      </div>
      <div className="tb-left">
        <span className="label">Arrangement</span>
        <p>&nbsp;</p>
      </div>
      <div>
        <span className="label">Checks of the room</span>
      </div>
      <div className="tb-left">
        <span className="label">Kept</span>
        <p>&nbsp;</p>
      </div>
      <div>
        <span className="label">At this sheet</span>
      </div>
    </div>
  );
}
