import { Noted } from './noted.ts';
import type { Scene } from './types.ts';

/** A scene for one reader, which notes what it reads: fields of the scene, of the classroom and of the arrangement. */
export class SceneReads {
  /** To be read from in place of the scene itself. */
  readonly view: Scene;
  private readonly scene: Noted<Scene>;
  private readonly classroom: Noted<Scene['classroom']>;
  private readonly arrangement: Noted<Scene['arrangement']>;
  /** Fields of the classroom in which many settings stand that have nothing to do with each other. */
  private readonly display: Noted<Scene['classroom']['display']>;
  private readonly options: Noted<Scene['classroom']['options']>;

  constructor(now: Scene) {
    this.display = new Noted(now.classroom.display);
    this.options = new Noted(now.classroom.options);
    this.classroom = new Noted(now.classroom, { display: this.display.view, options: this.options.view });
    this.arrangement = new Noted(now.arrangement);
    this.scene = new Noted(now, { classroom: this.classroom.view, arrangement: this.arrangement.view });
    this.view = this.scene.view;
  }

  /** Looks at another scene from now on. True when nothing that was read so far is different. */
  moveTo(next: Scene): boolean {
    const { classroom, arrangement } = next;
    // Each has to move, whatever the others say.
    const isStill = [
      this.scene.moveTo(next),
      this.classroom.moveTo(classroom),
      this.arrangement.moveTo(arrangement),
      this.display.moveTo(classroom.display),
      this.options.moveTo(classroom.options),
    ];
    return isStill.every(Boolean);
  }

  forget(): void {
    for (const noted of [this.scene, this.classroom, this.arrangement, this.display, this.options]) noted.forget();
  }
}
